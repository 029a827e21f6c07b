#pragma once

// Private to the room: the outer line of one that runs into itself.

#include <vector>

#include "dartwright/cutting/joint.hpp"

namespace dartwright::cutting {

/// The outer boundary of what a closed line winds round: a simple polygon. Precondition: the line winds round
/// no place clockwise, but for slivers as narrow as rounding makes them.
///
/// Spikes, where the line goes back along itself, are left out. Points that rounding puts on each other or on
/// a side are moved apart first, by no more than `nudge_mm`.
std::vector<RawPoint> outer_line(const std::vector<RawPoint>& line);

inline constexpr double nudge_mm = 1e-6;

}  // namespace dartwright::cutting
