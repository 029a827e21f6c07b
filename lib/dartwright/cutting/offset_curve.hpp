#pragma once

// Private to the room: the line at an even distance from a curve.

#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright::cutting {

/// Unit, square to a unit tangent, to the outside of an anticlockwise outline.
constexpr Vector outwards(Vector tangent) {
    return -perpendicular(tangent);
}

/// The points of a line, from index `first` to `last`, of which one runs backwards: the last before, and the
/// first after which the line goes on.
struct Detour {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// A cubic, its unit tangents at its ends, and how far beside it and how near to the truth its line is to
/// run.
struct BesideCubic {
    const Cubic& cubic;
    Vector first_tangent;
    Vector last_tangent;
    double width_mm = 0;
    double error_mm = 0;
};

/// Appends the points of the line `width_mm` outside the cubic, both ends included, within `error_mm` of the
/// true one, which is made of the cubic's own normals.
///
/// Where the curve bends inwards more tightly than the width, the true line runs backwards between two cusps:
/// neighbouring normals cross, and beyond their crossings the strip is turned over, so that the line would
/// wind round it clockwise. There the points make a detour: along the crossings, from the second cusp back
/// along the true line to the first, and along the crossings again. So the line still bounds, with the curve,
/// all that the normals sweep over, and winds round every place of it anticlockwise. Appends each detour to
/// `detours`. Preconditions: width_mm >= 0, error_mm > 0, a cubic that is not one point.
void offset_onto(std::vector<Point>& line, const BesideCubic& beside, std::vector<Detour>& detours);

}  // namespace dartwright::cutting
