#pragma once

// Private to this room: `put_right`, with a limit of one's own.

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// As `put_right` does, of outlines whose coordinates lie within so much of zero instead of 10 m. O(n).
Pattern put_right_within(Pattern pattern, double largest_mm);

}  // namespace dartwright
