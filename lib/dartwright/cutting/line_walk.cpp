#include "dartwright/cutting/line_walk.hpp"

#include <algorithm>

namespace dartwright::cutting {

LineWalk::LineWalk(const Piece& piece, const RawLine& line, std::size_t mouth, PressSide side)
    : piece_(piece),
      line_(line),
      mouth_(mouth),
      is_forward_(side == PressSide::after),
      at_(line.mouths[mouth].at + (is_forward_ ? 1 : 0)),
      steps_left_(2 * line.line.size()) {}

Point LineWalk::placed(Point p) const {
    const Point moved = apply(drawn_, p);
    return apply(motion_, is_over_fold_ ? mirrored(fold_, moved) : moved);
}

bool LineWalk::is_on_fold(const CutSide& side) const {
    return side.part == CutPart::edge &&
           is_fold_edge(piece_, piece_.outline.items[side.item].as_edge()->edge);
}

// The mouth whose two ends these neighbouring points are.
std::optional<std::size_t> LineWalk::mouth_between(std::size_t from, std::size_t to) const {
    const auto [first, last] = std::minmax(from, to);
    if (last != first + 1) return std::nullopt;
    const auto found = std::lower_bound(line_.mouths.begin(), line_.mouths.end(), first,
                                        [](const RawMouth& mouth, std::size_t at) { return mouth.at < at; });
    if (found == line_.mouths.end() || found->at != first) return std::nullopt;
    return static_cast<std::size_t>(found - line_.mouths.begin());
}

void LineWalk::go_over_fold(const CutSide& on_fold) {
    const std::vector<Run> runs = runs_of(piece_.outline);
    const Run& fold = run_named(runs, piece_.outline.items[on_fold.item].as_edge()->edge, piece_.name);
    const Point from = end_point(piece_.outline, fold, RunEnd::start);
    fold_ = {from, unit(end_point(piece_.outline, fold, RunEnd::end) - from)};
    is_over_fold_ = is_beyond_corner_ = true;
    is_forward_ = !is_forward_;
}

void LineWalk::close(std::size_t mouth) {
    const Motion& closing = line_.mouths[mouth].closing;
    Motion& before_all = is_over_fold_ ? drawn_ : motion_;
    before_all = then(is_forward_ ? closing : inverse(closing), before_all);
}

std::optional<BesideMouth> LineWalk::next() {
    const std::size_t n = line_.line.size();
    while (steps_left_ > 0) {
        --steps_left_;
        const std::size_t to = is_forward_ ? (at_ + 1) % n : (at_ + n - 1) % n;
        const CutSide& side = line_.line.sides[is_forward_ ? at_ : to];
        if (const auto mouth = mouth_between(at_, to)) {
            if (*mouth == mouth_ && !is_over_fold_) return std::nullopt;
            close(*mouth);
            at_ = to;
            continue;
        }
        if (is_on_fold(side)) {
            if (is_over_fold_) return std::nullopt;
            go_over_fold(side);
            continue;
        }
        const bool is_edge = side.part == CutPart::edge;
        const std::string edge = is_edge ? piece_.outline.items[side.item].as_edge()->edge : "";
        if (is_edge && own_edge_.empty()) own_edge_ = edge;
        if (side.part == CutPart::corner || side.part == CutPart::step || (is_edge && edge != own_edge_)) {
            is_beyond_corner_ = true;
        }
        const Line line{placed(line_.line.points[at_]), placed(line_.line.points[to])};
        at_ = to;
        if (!(line.a == line.b)) return BesideMouth{line, !is_beyond_corner_};
    }
    return std::nullopt;
}

}  // namespace dartwright::cutting
