#pragma once

// Private to the room: the outer line of one that runs into itself.

#include <vector>

#include "dartwright/cutting/joint.hpp"

namespace dartwright::cutting {

/// The outer boundary of what a closed line winds round: a simple polygon. Preconditions: the line winds
/// round no place clockwise, and its lowest point is on its outer side.
///
/// Points that rounding puts on each other or on a side are moved apart first, by no more than `nudge_mm`.
std::vector<RawPoint> outer_line(const std::vector<RawPoint>& line);

inline constexpr double nudge_mm = 1e-6;

}  // namespace dartwright::cutting
