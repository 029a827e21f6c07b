#pragma once

// Private to the room: a grain line placed in a part that has none of its own.

#include <optional>
#include <vector>

#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// So far a grain arrow stays from the outline and the dart legs where there is room, mm. Its heads are half
/// as wide; an arrow that touches an edge reads as a mark on it.
inline constexpr double grain_clear_mm = 5;

/// From the arrow to the nearest side of the polygon; 0 where it meets one or lies outside. O(vertices).
double grain_clearance(const std::vector<Point>& polygon, const Grain& grain);

/// The middle two thirds of the longest stretch inside the polygon in the direction of the grain, without an
/// edge that it runs along. Of several lines across the polygon the longest is taken. Where that would come
/// nearer to a side than `grain_clear_mm`, the longest that does not; in a polygon too narrow for it half of
/// that, a quarter, and so on, as long as four times that is left for the arrow. O(vertices).
/// Properties: (1) the direction is kept; (2) where stretches of four times a margin have that margin on a
/// strip as wide as a sixty-fourth of the polygon, so has the arrow, for margins of 5 mm, 2.5, 1.25, 0.625.
Grain grain_within(const std::vector<Point>& polygon, Vector direction);

/// The given arrow where it keeps the margin; as much of it as does, if that is half or more; else empty.
std::optional<Grain> grain_kept_within(const std::vector<Point>& polygon, const Grain& grain,
                                       double clear_mm);

}  // namespace dartwright
