#pragma once

// Private to the room: a grain line placed in a part that has none of its own.

#include <vector>

#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The middle two thirds of the longest stretch inside the polygon in the direction of the grain, without an
/// edge that it runs along. Of several lines across the polygon the longest is taken. O(vertices).
Grain grain_within(const std::vector<Point>& polygon, Vector direction);

}  // namespace dartwright
