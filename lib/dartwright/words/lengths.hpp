#pragma once

// Private to the library and its program: lengths, areas and angles in the reader's unit. Precondition of
// all: finite (std::invalid_argument).

#include <string>

#include "dartwright/words/unit.hpp"

namespace dartwright {

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
/// The figure of a length without its unit, for tables: to a tenth of a millimetre, or the hundredth of an
/// inch; the other with a sign in front of what is not 0.
std::string length_figure(double length_mm, Unit unit);
std::string signed_length_figure(double length_mm, Unit unit);
/// Of an allowance, for tables: in inches a fraction to 1/32, `5/8`, or `about 25/32` where it is none.
std::string width_figure(double width_mm, Unit unit);
/// An area in square centimetres, or square inches for a pattern in inches: `12.3 cm²`.
std::string area_words(double area_mm2, Unit unit);
/// `11.8°`
std::string angle_words(double angle_rad);
std::string angle_words_of_degrees(double angle_deg);

/// A length as a sentence has it: `12.3 mm`, two decimals below 1 mm, where the tolerances lie; `0 mm`.
std::string mm_in_sentence(double value_mm);
/// A length as a sentence has it, in the reader's unit. Those who work in cm speak of mm there, as above; in
/// inches a measure is told to the nearest 1/32, `4 5/8 in`, with `about` where it is none, and a difference
/// in decimals, `0.11 in`.
std::string measure_in_sentence(double length_mm, Unit unit);
std::string difference_in_sentence(double length_mm, Unit unit);
/// An angle as a sentence has it: `3.4 degrees`.
std::string degrees_in_sentence(double value_deg);

}  // namespace dartwright
