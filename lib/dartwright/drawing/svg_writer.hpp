#pragma once

#include <string>

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

/// The drawing as an SVG file (UTF-8) at true size: `width` and `height` in mm and a `viewBox` in which one
/// unit is one mm. Each group is a `g` with its name as `title` and an `id` made from the names on the way to
/// it (letters, digits and `-`, joined by `.`; a number added where two would be equal). Numbers are rounded
/// to 1e-4 mm. The same drawing gives the same bytes. std::invalid_argument for what is not drawable. O(n).
std::string to_svg(const Drawing& drawing);

}  // namespace dartwright
