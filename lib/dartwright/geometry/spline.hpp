#pragma once

#include <span>
#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// The C2 cubic spline through the points in their order, with centripetal parameters (Lee 1989: the
/// parameter grows by the square root of the chord) and natural ends, as one cubic a span.
/// Rigid motions of the points move the spline (to rounding). With two points it is a straight cubic.
/// Preconditions: two points or more, neighbours distinct, all finite (std::invalid_argument). O(n).
std::vector<Cubic> spline_through(std::span<const Point> points);

}  // namespace dartwright
