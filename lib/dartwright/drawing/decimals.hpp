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
/// `11.8°`
std::string angle_words(double angle_rad);

}  // namespace dartwright
