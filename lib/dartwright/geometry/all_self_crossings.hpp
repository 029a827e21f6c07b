#pragma once

// Private to the library.

#include "dartwright/geometry/predicates.hpp"

namespace dartwright {

/// What a SelfCrossing says, without the place of a plain crossing, which few ask for.
struct MetSides {
    std::size_t first = 0;
    std::size_t second = 0;
    bool is_crossing = false;  ///< the insides of the two cross
    Point touch;               ///< else where they meet
};
Point place_of(const MetSides& met, std::span<const Point> polygon);

/// All that `self_crossings` would give, in any order, for those who put them into one of their own.
std::vector<MetSides> all_self_crossings(std::span<const Point> polygon);

}  // namespace dartwright
