#pragma once

#include <optional>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// A straight line without ends that is walked one way. Precondition of what uses it: `along` is not zero.
struct DirectedLine {
    Point at;
    Vector along;
};

/// The first parameter at which the curve, coming from the left of the line, is on it; 0 for a curve that
/// starts on the line or right of it. Empty if the whole curve lies to the left. The place at the parameter
/// is on the line to rounding of the coordinates, and its place along the line is so to that over the sine of
/// the angle at which the two meet. A curve that touches the line without crossing it meets it if it comes
/// nearer than 1e-11 mm. O(1): at most some hundred evaluations.
std::optional<double> first_meeting(const Curve& curve, const DirectedLine& line);

}  // namespace dartwright
