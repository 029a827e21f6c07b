#pragma once

// Private to the library.

#include "dartwright/geometry/predicates.hpp"

namespace dartwright {

/// All that `self_crossings` would give, in any order, for those who put them into one of their own.
std::vector<SelfCrossing> all_self_crossings(std::span<const Point> polygon);

}  // namespace dartwright
