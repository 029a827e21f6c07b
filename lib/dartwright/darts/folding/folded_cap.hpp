#pragma once

// Private to the library: a dart folded over the edge beside its mouth, and the cap cut there. Which edge
// that is, of the stitching line or of the cutting line, is the caller's.

#include <functional>
#include <optional>
#include <vector>

#include "dartwright/geometry/curve.hpp"
#include "dartwright/pattern/press.hpp"

namespace dartwright {

/// A dart as it is folded: straight lines from its point to the ends of its mouth. Precondition of what uses
/// it: three different points, b anticlockwise of a by less than a whole turn.
struct FoldedDart {
    Point a;
    Point b;
    Point point;
    double sewn_angle_rad = 0;  ///< APB
};
/// Unit, the bisector of APB, from the point towards the mouth.
Vector centre_line(const FoldedDart& dart);

/// A curve of the edge beside a mouth, as it lies when the other darts are sewn.
struct BesideMouth {
    Curve curve;                  ///< away from the mouth, starting where the last one ended
    bool is_of_own_edge = false;  ///< of the edge beside the mouth, not beyond a corner
};
/// Gives the curves one after the other, away from the mouth end on the press side; none at the end of the
/// walk.
using EdgeBesideMouth = std::function<std::optional<BesideMouth>()>;

struct FoldedCap {
    std::vector<Curve> curves;      ///< from a to b
    std::size_t curves_to_tip = 0;  ///< so many of them lie before the tip
    Point tip;                      ///< on the centre line
    double depth_mm = 0;            ///< how far the tip stands out beyond the straight mouth
    bool is_far_out = false;        ///< by more than twice the mouth's width
    bool is_square = false;  ///< the edge does not reach the centre line, and the cap goes square across
};
FoldedCap folded_cap(const FoldedDart& dart, PressSide side, const EdgeBesideMouth& next);

}  // namespace dartwright
