#pragma once

// Private to the room: the line at an even distance from a curve.

#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright::cutting {

/// Unit, square to a unit tangent, to the outside of an anticlockwise outline.
constexpr Vector outwards(Vector tangent) {
    return -perpendicular(tangent);
}

/// Appends the points of the line `width_mm` outside the curve, both ends included, within `error_mm` of the
/// true one, which is made of the curve's own normals.
///
/// Where the curve bends inwards more tightly than the width, the true line runs backwards between two cusps.
/// There the points go from the first cusp to the curve, along its chord, and out to the other cusp, so that
/// the line still bounds, with the curve, what lies within the width of it, and winds round it anticlockwise.
/// Returns whether there is such a detour. Preconditions: width_mm >= 0, error_mm > 0, a curve that is not
/// one point.
bool offset_onto(std::vector<Point>& line, const Curve& curve, double width_mm, double error_mm);

}  // namespace dartwright::cutting
