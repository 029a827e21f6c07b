#pragma once

// Private to this room.

#include <vector>

#include "dartwright/geometry/motion.hpp"

namespace dartwright {

/// Places of one pattern, and the same places of the other.
struct PlacePairs {
    std::vector<Point> from;
    std::vector<Point> to;
};

/// The rigid motion that brings the places onto each other with (nearly) the least sum of distances. A least
/// sum of squares gives way to a corner that was moved; this one stays with what was kept, as long as that is
/// most of the places. Identity without places. O(n) a round, a few rounds.
Motion robust_fit(const PlacePairs& places);

}  // namespace dartwright
