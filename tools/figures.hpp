#pragma once

#include <string>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright::tools {

/// The unit's word: `mm`, `cm`, `in`.
const char* word_of(Unit unit);
/// A length as a number of the unit, without its word: to a tenth of a millimetre, or the hundredth of an
/// inch.
std::string figure(double length_mm, Unit unit);
/// Of an allowance: in inches a fraction to 1/32, `5/8`, or `about 25/32` where it is none.
std::string width_figure(double width_mm, Unit unit);
/// The same with a sign in front of what is not 0.
std::string signed_figure(double length_mm, Unit unit);
/// An area in square centimetres, or square inches for a pattern in inches.
std::string area_words(double area_mm2, Unit unit);
/// An angle in degrees, such as `11.8°`.
std::string angle_figure(double degrees);

}  // namespace dartwright::tools
