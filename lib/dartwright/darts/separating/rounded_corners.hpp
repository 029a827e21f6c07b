#pragma once

// Private to the room: two corners that are sewn to each other, rounded so that they still match.

#include <array>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// Directions of the two straight legs of a corner, unit: into it and out of it.
struct StraightCorner {
    Point corner;
    Vector in;
    Vector out;
};
struct RoundedCorners {
    std::array<Cubic, 2> curves;  ///< each from `span` before its corner to `span` beyond
    double length_mm = 0;         ///< of each
};
/// Each corner rounded by one cubic that leaves its legs in their directions. The gentler corner is drawn
/// nearly as an arc of a circle; the sharper one is drawn fuller, so that its curve is as long (it may leave
/// its legs outward, by at most 3.5 % of the span). Lengths agree to 1e-9 of the span. Preconditions: span
/// over 0, mm; each corner turns by less than 150 degrees.
RoundedCorners rounded_corners(const StraightCorner& first, const StraightCorner& second, double span_mm);

/// How far the direction turns at the corner, radians, not signed.
double turn_at(const StraightCorner& corner);

}  // namespace dartwright
