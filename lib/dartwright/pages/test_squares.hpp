#pragma once

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

inline constexpr double metric_square_mm = 100;
inline constexpr double inch_square_mm = 4 * 25.4;
/// Between two squares, and round them.
inline constexpr double square_gap_mm = 6;

/// A square of 100 mm and one of 4 in, their sides measured from middle to middle of the lines, with what to
/// do with them written inside. Each is a group of one closed path and its words; the corner is the lower
/// left.
DrawnGroup metric_square(Point corner);
DrawnGroup inch_square(Point corner);

/// What must be said before anyone cuts.
const char* caution_words();

/// Both squares side by side with the print's name and the caution: for a sheet that is large enough to carry
/// them itself. The lower left corner is the origin.
DrawnGroup squares_block(const std::string& title, const std::string& date);

}  // namespace dartwright
