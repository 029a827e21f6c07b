#pragma once

// Private to the room: the edge beside a dart's mouth, walked away from it as it lies when the other darts
// are sewn.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/folding/folded_cap.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/press.hpp"

namespace dartwright {

/// Walks the outline of a piece from a mouth end of a dart away from the dart. Each dart on the way is closed
/// about its point, so that what lies beyond it is moved; at an edge on a fold the walk goes on along the
/// half that lies under the piece. It ends where it comes back to the dart, or to a fold again.
class MouthWalk {
  public:
    /// The piece must outlive the walk. Preconditions: the item is a dart, the outline is closed.
    MouthWalk(const Piece& piece, std::size_t dart, PressSide side, double legs_tolerance_mm);

    /// The next curve, or none at the end of the walk. Impossible if a dart on the way has legs that differ
    /// by more than the tolerance.
    std::optional<BesideMouth> next();
    /// The darts that the walk has come over, in its order.
    const std::vector<std::string>& closed_darts() const { return closed_darts_; }
    bool is_over_fold() const { return is_over_fold_; }

  private:
    Point placed(Point p) const;
    Curve placed(const Curve& curve) const;
    bool advance();
    void close(std::size_t item);
    void take(std::size_t item);

    const Piece& piece_;
    std::size_t dart_;
    double legs_tolerance_mm_;
    bool is_forward_;
    std::size_t item_;
    Point end_;
    std::string own_edge_;
    bool is_beyond_corner_ = false;
    bool is_over_fold_ = false;
    MirrorLine fold_;  ///< once the walk is over it
    Motion motion_;
    std::vector<Curve> waiting_;  ///< of the item come to last, the next one at the back
    std::vector<std::string> closed_darts_;
};

}  // namespace dartwright
