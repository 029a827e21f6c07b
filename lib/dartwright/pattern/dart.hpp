#pragma once

#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/outline.hpp"

namespace dartwright {

/// The figures of one dart of an outline. A and B are the mouth ends in outline order.
struct DartFigures {
    Point a;
    Point b;
    Point point;
    Point pivot;
    double leg_a = 0;  ///< arc length A to P, mm
    double leg_b = 0;
    double pivot_leg_a = 0;  ///< straight distance Q to A, mm
    double pivot_leg_b = 0;
    double intake = 0;     ///< straight distance A to B, mm
    double angle_rad = 0;  ///< dart angle AQB, at the pivot, the conserved quantity (anticlockwise from QA to
                           ///< QB, in (-pi, pi])
    double sewn_angle_rad = 0;  ///< APB, at the point
    double off_bisector = 0;    ///< signed distance of P from the bisector of AQB, mm (0 if P is Q)
    double back_off = 0;        ///< signed distance of P from Q towards the mouth along the bisector, mm
};
/// Precondition: the item is a dart (std::invalid_argument). O(1).
DartFigures figures_of(const Outline& outline, std::size_t item);

/// Direction of the bisector of AQB from the pivot to the mouth (unit).
Vector bisector_of(const DartFigures& figures);

/// The turn that closes the dart: QB to QA (about the pivot) or PB to PA (about the point); none without legs.
Motion closing_about_pivot(const DartFigures& figures);
Motion closing_about_point(const DartFigures& figures);

/// Where a tuck's stitching ends on each leg, or a dart's: its point. Precondition as above.
PairOfPoints stitching_ends(const Outline& outline, std::size_t item);

}  // namespace dartwright
