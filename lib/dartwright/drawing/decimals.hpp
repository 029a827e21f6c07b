#pragma once

#include <string>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// The number rounded to so many decimals, always with a point and never with a locale's habits; -0 is 0.
/// `fixed_decimals(1.5, 2)` is `1.50`, `shortest_decimals(1.5, 2)` is `1.5`. Precondition: finite
/// (std::invalid_argument).
std::string fixed_decimals(double value, int decimals);
std::string shortest_decimals(double value, int decimals);

/// A length as a cutter reads it, in the pattern's unit: `142.5 mm`, `14.25 cm`, `5.61 in`.
std::string length_words(double length_mm, Unit unit);
/// A length as it is laid off at the table, no finer than that: `143 mm`, `14.3 cm`, `5 5/8 in` (the nearest
/// 1/32 in). The figure alone is without its unit.
std::string ruler_words(double length_mm, Unit unit);
std::string ruler_figure(double length_mm, Unit unit);
/// A width as it is spoken of: `15 mm`, `1.5 cm`; in inches a fraction to 1/32, `5/8 in`, and `about 25/32
/// in` where the width is none. No line breaks in it. The other has no unit, and may be broken.
std::string width_words(double width_mm, Unit unit);
std::string width_in_unit(double width_mm, Unit unit);
/// Cloth as it is bought: to the next 5 cm, `45 cm`; in inches to the next eighth of a yard, `1 3/8 yards`.
std::string bought_words(double length_mm, Unit unit);
/// `11.8°`
std::string angle_words(double angle_rad);

}  // namespace dartwright
