#pragma once

#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// Relative error that every arc length below keeps to (plus rounding of the sum).
inline constexpr double arc_length_relative_error = 1e-9;

/// Length of the whole curve in mm. Error at most `arc_length_relative_error` of the length, for every
/// finite cubic, cusps and near-cusps included.
double length(const Curve& curve);
/// Length between two parameters, 0 <= from <= to <= 1.
double length_between(const Curve& curve, double from, double to);
/// The parameter at a distance along the curve from its start. Distances outside [0, length] are clamped.
/// The point at the returned parameter lies within 1e-9 mm (or 1e-12 of the length, if more) of the place.
double parameter_at(const Curve& curve, double distance_mm);

}  // namespace dartwright
