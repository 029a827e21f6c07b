#pragma once

#include <string>

#include "dartwright/cutting/lay.hpp"
#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct LayLook {
    std::string title;
    Unit unit = Unit::mm;
    bool is_folded = true;
};

/// A lay is drawn this much smaller than it is, and says so.
inline constexpr double lay_scale = 5;

/// The cloth as it lies on the table before the cutter, its length from left to right and its fold (or one
/// selvedge) at the front, with the pieces on it: name, how each is cut, grain. Layers `cloth` and `pieces`,
/// in that one of each piece's name, and `words`.
Drawing draw_lay(const Lay& lay, const LayLook& look);

}  // namespace dartwright
