#include "figures.hpp"

#include "dartwright/drawing/decimals.hpp"

namespace dartwright::tools {

const char* word_of(Unit unit) {
    return unit == Unit::mm ? "mm" : unit == Unit::cm ? "cm" : "in";
}

std::string figure(double length_mm, Unit unit) {
    return fixed_decimals(length_mm / mm_in(unit), unit == Unit::mm ? 1 : 2);
}

std::string width_figure(double width_mm, Unit unit) {
    return unit == Unit::inch ? width_in_unit(width_mm, unit) : figure(width_mm, unit);
}

std::string signed_figure(double length_mm, Unit unit) {
    const std::string words = figure(length_mm, unit);
    const bool is_zero = words.find_first_not_of("0.") == std::string::npos;
    return is_zero || words.front() == '-' ? words : "+" + words;
}

std::string area_words(double area_mm2, Unit unit) {
    const Unit shown = unit == Unit::inch ? Unit::inch : Unit::cm;
    return fixed_decimals(area_mm2 / (mm_in(shown) * mm_in(shown)), 1) +
           (shown == Unit::inch ? " in²" : " cm²");
}

std::string angle_figure(double degrees) {
    return fixed_decimals(degrees, 1) + "°";
}

}  // namespace dartwright::tools
