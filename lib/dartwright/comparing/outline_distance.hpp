#pragma once

// Private to this room: how far two outlines lie apart.

#include "dartwright/comparing/compare.hpp"

namespace dartwright {

/// The search for the farthest place stops when none can lie farther than the farthest found by more than
/// this, mm: half of what counts as one place on paper.
inline constexpr double outline_distance_error_mm = 0.05;

/// The most that a place of either outline lies from the other, darts drawn to their points; the first is
/// moved before. The distance from a curve changes by no more than the way walked, so that a stretch can be
/// left out when the distances at its ends and its length allow nothing farther. O(log n) a place looked at,
/// for n curves; each distance is as exact as `closest_point`.
OutlineDistance outline_distance(const Outline& first, const Motion& motion, const Outline& second);

}  // namespace dartwright
