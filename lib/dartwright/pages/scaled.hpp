#pragma once

// Private to this room.

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

/// Everything larger by a factor about the origin: lines, their widths and dashes, words. Precondition:
/// factor > 0. O(n).
DrawnGroup scaled(const DrawnGroup& group, double factor);

}  // namespace dartwright
