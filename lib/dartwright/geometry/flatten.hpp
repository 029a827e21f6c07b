#pragma once

#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// Appends to `polyline` the points of a flattening of the curve, its start left out and its end included
/// (so that a chain of curves is flattened by one call each). Every point of the curve lies within
/// `chord_error_mm` of the polyline and the reverse. Precondition: chord_error_mm > 0
/// (std::invalid_argument). The number of points grows with the inverse root of the chord error.
void flatten_onto(std::vector<Point>& polyline, const Curve& curve, double chord_error_mm);
std::vector<Point> flattened(const Curve& curve, double chord_error_mm);

}  // namespace dartwright
