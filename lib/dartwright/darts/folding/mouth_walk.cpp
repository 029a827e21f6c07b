#include "dartwright/darts/folding/mouth_walk.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {
namespace {

// The line of the fold: through both ends of its edge.
MirrorLine line_of_fold(const Piece& piece, const std::string& edge) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& fold = run_named(runs, edge, piece.name);
    const Point from = end_point(piece.outline, fold, RunEnd::start);
    return {from, unit(end_point(piece.outline, fold, RunEnd::end) - from)};
}

}  // namespace

MouthWalk::MouthWalk(const Piece& piece, std::size_t dart, PressSide side, double legs_tolerance_mm)
    : piece_(piece),
      dart_(dart),
      legs_tolerance_mm_(legs_tolerance_mm),
      is_forward_(side == PressSide::after),
      item_(dart),
      end_(is_forward_ ? piece.outline.items[dart].to : start_of_item(piece.outline, dart)) {}

Point MouthWalk::placed(Point p) const {
    return apply(motion_, is_over_fold_ ? mirrored(fold_, p) : p);
}

Curve MouthWalk::placed(const Curve& curve) const {
    return moved(is_over_fold_ ? mirrored(fold_, curve) : curve, motion_);
}

std::optional<BesideMouth> MouthWalk::next() {
    while (waiting_.empty()) {
        if (!advance()) return std::nullopt;
    }
    // Joints agree but for rounding and the gap that the outline may have; so do those over a closed dart.
    const Curve curve = placed(waiting_.back());
    waiting_.pop_back();
    const BesideMouth step{with_ends(curve, {end_, end_of(curve)}), !is_beyond_corner_};
    end_ = end_of(step.curve);
    return step;
}

// Goes to the next item; false at the end of the walk.
bool MouthWalk::advance() {
    const std::vector<OutlineItem>& items = piece_.outline.items;
    item_ = (item_ + (is_forward_ ? 1 : items.size() - 1)) % items.size();
    const EdgeItem* edge = items[item_].as_edge();
    if (edge && is_fold_edge(piece_, edge->edge)) {
        if (is_over_fold_) return false;
        fold_ = line_of_fold(piece_, edge->edge);
        is_over_fold_ = is_beyond_corner_ = true;
        is_forward_ = !is_forward_;
    } else if (edge) {
        take(item_);
    } else if (item_ == dart_ && !is_over_fold_) {
        return false;
    } else {
        close(item_);
    }
    return true;
}

void MouthWalk::take(std::size_t item) {
    const std::string& edge = piece_.outline.items[item].as_edge()->edge;
    if (own_edge_.empty()) own_edge_ = edge;
    if (edge != own_edge_) is_beyond_corner_ = true;
    waiting_ = curves_of_item(piece_.outline, item);
    if (is_forward_) {
        std::reverse(waiting_.begin(), waiting_.end());
    } else {
        for (Curve& curve : waiting_) curve = reversed(curve);
    }
}

void MouthWalk::close(std::size_t item) {
    const OutlineItem& dart = piece_.outline.items[item];
    const Point far_end = is_forward_ ? dart.to : start_of_item(piece_.outline, item);
    const Point point = placed(dart.as_dart()->point);
    const Point far_placed = placed(far_end);
    const Vector near_leg = end_ - point;
    const Vector far_leg = far_placed - point;
    const double differ = std::abs(norm(near_leg) - norm(far_leg));
    if (differ > legs_tolerance_mm_) {
        throw Impossible("the legs of " + quoted(dart.as_dart()->name) + " beside the mouth differ by " +
                             difference_told(differ),
                         "true that dart first");
    }
    if (norm(near_leg) > 0 && norm(far_leg) > 0) {
        motion_ = then(motion_, turn_about(point, turn_between(far_leg, near_leg)));
    }
    motion_ = then(motion_, shift_by(end_ - placed(far_end)));
    closed_darts_.push_back(dart.as_dart()->name);
}

}  // namespace dartwright
