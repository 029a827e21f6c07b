#include "dartwright/cutting/fold_trim.hpp"

#include <algorithm>
#include <optional>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright::cutting {
namespace {

// From the anticlockwise start of the fold to its end; the piece lies to the left.
struct FoldLine {
    Point from;
    Vector along;         // unit
    double slack_mm = 0;  // how far the edge itself lies beyond, and the line's own error
    double beyond(Point p) const { return -cross(along, p - from); }
};

std::optional<FoldLine> fold_line(const Piece& piece, const std::string& edge) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const auto run =
        std::find_if(runs.begin(), runs.end(), [&](const Run& each) { return each.edge == edge; });
    if (run == runs.end() || run->items.empty()) return std::nullopt;
    const Point start = start_of_item(piece.outline, run->items.front());
    const Vector along = piece.outline.items[run->items.back()].to - start;
    if (squared_norm(along) == 0) return std::nullopt;
    FoldLine fold{start, unit(along), 0};
    std::vector<Point> drawn;
    for (const std::size_t item : run->items)
        for (const Curve& curve : curves_of_item(piece.outline, item))
            flatten_onto(drawn, curve, cutting_line_error_mm);
    for (const Point p : drawn) fold.slack_mm = std::max(fold.slack_mm, fold.beyond(p));
    fold.slack_mm += cutting_line_error_mm;
    return fold;
}

class Trimmer {
  public:
    Trimmer(const FoldLine& fold, const CuttingLine& line) : fold_(fold), line_(line) {}

    // Without the stretches that reach farther beyond than the slack; empty if there is none, or nothing
    // else.
    CuttingLine trimmed() {
        const std::size_t n = line_.points.size();
        std::size_t start = 0;
        while (start < n && beyond(start) > 0) ++start;
        if (start == n) return {};
        CuttingLine out;
        bool is_changed = false;
        for (std::size_t k = 0; k < n;) {
            const std::size_t i = (start + k) % n;
            out.points.push_back(line_.points[i]);
            out.sides.push_back(line_.sides[i]);
            const std::size_t size = stretch_beyond(i);
            if (size == 0) {
                ++k;
                continue;
            }
            out.points.push_back(meeting(i, (i + 1) % n));
            out.sides.push_back({CutPart::corner, line_.sides[i].item, 0});
            const std::size_t last = (i + size) % n;
            out.points.push_back(meeting(last, (last + 1) % n));
            out.sides.push_back(line_.sides[last]);
            k += size + 1;
            is_changed = true;
        }
        return is_changed ? out : CuttingLine{};
    }

  private:
    double beyond(std::size_t i) const { return fold_.beyond(line_.points[i]); }

    // How many points after this one lie beyond, if any lies farther than the slack.
    std::size_t stretch_beyond(std::size_t i) const {
        const std::size_t n = line_.points.size();
        std::size_t size = 0;
        double farthest = 0;
        while (size < n && beyond((i + 1 + size) % n) > 0)
            farthest = std::max(farthest, beyond((i + 1 + size++) % n));
        return farthest > fold_.slack_mm ? size : 0;
    }

    Point meeting(std::size_t i, std::size_t j) const {
        return between(line_.points[i], line_.points[j], beyond(i) / (beyond(i) - beyond(j)));
    }

    const FoldLine& fold_;
    const CuttingLine& line_;
};

// A stretch may come back to the point from which it left.
void drop_repeated(CuttingLine& line) {
    for (std::size_t i = line.points.size(); i-- > 1;) {
        if (!(line.points[i] == line.points[i - 1])) continue;
        line.points.erase(line.points.begin() + static_cast<std::ptrdiff_t>(i - 1));
        line.sides.erase(line.sides.begin() + static_cast<std::ptrdiff_t>(i - 1));
    }
}

void trim_at(const Piece& piece, const std::string& edge, CuttingLine& line) {
    const std::optional<FoldLine> fold = fold_line(piece, edge);
    if (!fold) return;
    CuttingLine trimmed = Trimmer(*fold, line).trimmed();
    if (trimmed.points.empty()) return;
    drop_repeated(trimmed);
    if (!is_simple(trimmed.points)) {
        line.notes.push_back("an allowance reaches over the fold, " + quoted(edge) +
                             ", and could not be cut off there");
        return;
    }
    line.points = std::move(trimmed.points);
    line.sides = std::move(trimmed.sides);
    line.notes.push_back("an allowance that reached over the fold, " + quoted(edge) +
                         ", is cut off along it");
}

}  // namespace

void trim_at_fold(const Piece& piece, CuttingLine& line) {
    for (const std::string& edge : fold_edges(piece)) trim_at(piece, edge, line);
}

}  // namespace dartwright::cutting
