#include "dartwright/words/lengths.hpp"

#include <cmath>
#include <numbers>

#include "dartwright/words/written_number.hpp"

namespace dartwright {

namespace {

constexpr long parts_of_inch = 32;
/// A width this near to a fraction of an inch is that, mm: half of what four decimals of a centimetre round.
constexpr double is_fraction_mm = 0.01;

/// `5 5/8`: the nearest 1/32, in lowest terms. Precondition: finite.
std::string inch_fraction(double length_mm) {
    const double parts = std::round(rounded_figure(std::abs(length_mm) / mm_in(Unit::inch) * parts_of_inch));
    const std::string sign = length_mm < 0 && parts > 0 ? "-" : "";
    const double whole = std::floor(parts / parts_of_inch);
    long over = std::lround(parts - whole * parts_of_inch);
    if (over == 0) return sign + fixed_decimals(whole, 0);
    long under = parts_of_inch;
    for (; over % 2 == 0; over /= 2) under /= 2;
    const std::string fraction = std::to_string(over) + "/" + std::to_string(under);
    return sign + (whole > 0 ? fixed_decimals(whole, 0) + " " : "") + fraction;
}

bool is_inch_fraction(double length_mm) {
    const double parts = length_mm / mm_in(Unit::inch) * parts_of_inch;
    return std::abs(parts - std::round(parts)) * mm_in(Unit::inch) / parts_of_inch <= is_fraction_mm;
}

}  // namespace

std::string length_figure(double length_mm, Unit unit) {
    // A tenth of a millimetre, or the hundredth of an inch: what can be laid off with a ruler and no more.
    return fixed_decimals(rounded_figure(length_mm / mm_in(unit)), unit == Unit::mm ? 1 : 2);
}

std::string signed_length_figure(double length_mm, Unit unit) {
    const std::string words = length_figure(length_mm, unit);
    const bool is_zero = words.find_first_not_of("0.") == std::string::npos;
    return is_zero || words.front() == '-' ? words : "+" + words;
}

std::string length_words(double length_mm, Unit unit) {
    return length_figure(length_mm, unit) + " " + word_of(unit);
}

std::string ruler_figure(double length_mm, Unit unit) {
    if (unit == Unit::inch) return inch_fraction(length_mm);
    return fixed_decimals(rounded_figure(length_mm / mm_in(unit)), unit == Unit::mm ? 0 : 1);
}

std::string ruler_words(double length_mm, Unit unit) {
    return ruler_figure(length_mm, unit) + " " + word_of(unit);
}

std::string width_in_unit(double width_mm, Unit unit) {
    if (unit != Unit::inch) return shortest_decimals(rounded_figure(width_mm / mm_in(unit)), 3);
    return (is_inch_fraction(width_mm) ? "" : "about ") + inch_fraction(width_mm);
}

std::string width_words(double width_mm, Unit unit) {
    std::string words;
    for (const char letter : width_in_unit(width_mm, unit) + " " + word_of(unit))
        words += letter == ' ' ? std::string("\u00a0") : std::string(1, letter);
    return words;
}

std::string bought_words(double length_mm, Unit unit) {
    constexpr double step_mm = 50;
    constexpr double rounding_mm = 1e-6;
    if (unit != Unit::inch) {
        const double bought = step_mm * std::ceil((length_mm - rounding_mm) / step_mm);
        return shortest_decimals(bought / mm_in(unit), 0) + (unit == Unit::mm ? " mm" : " cm");
    }
    constexpr double yard_in = 36;
    constexpr double eighth_mm = yard_in / 8 * 25.4;
    long eighths = std::lround(std::ceil((length_mm - rounding_mm) / eighth_mm));
    const long yards = eighths / 8;
    eighths %= 8;
    if (eighths == 0) return std::to_string(yards) + (yards == 1 ? " yard" : " yards");
    long under = 8;
    for (; eighths % 2 == 0; eighths /= 2) under /= 2;
    const std::string fraction = std::to_string(eighths) + "/" + std::to_string(under);
    return yards == 0 ? fraction + " yard" : std::to_string(yards) + " " + fraction + " yards";
}

std::string width_figure(double width_mm, Unit unit) {
    return unit == Unit::inch ? width_in_unit(width_mm, unit) : length_figure(width_mm, unit);
}

std::string area_words(double area_mm2, Unit unit) {
    const Unit shown = unit == Unit::inch ? Unit::inch : Unit::cm;
    return fixed_decimals(rounded_figure(area_mm2 / (mm_in(shown) * mm_in(shown))), 1) +
           (shown == Unit::inch ? " in\u00B2" : " cm\u00B2");
}

std::string angle_words(double angle_rad) {
    return angle_words_of_degrees(angle_rad * (180 / std::numbers::pi));
}

std::string angle_words_of_degrees(double angle_deg) {
    return fixed_decimals(rounded_figure(angle_deg), 1) + "\u00B0";
}

std::string mm_in_sentence(double value_mm) {
    return figure_in_sentence(value_mm) + " mm";
}

std::string measure_in_sentence(double length_mm, Unit unit) {
    return unit == Unit::inch ? width_in_unit(length_mm, unit) + " in" : mm_in_sentence(length_mm);
}

std::string difference_in_sentence(double length_mm, Unit unit) {
    if (unit != Unit::inch) return mm_in_sentence(length_mm);
    // A thousandth of an inch is a fortieth of a millimetre; tolerances are some twenty of them.
    const double inches = rounded_figure(length_mm / mm_in(unit));
    return shortest_decimals(inches, std::abs(inches) < 1 ? 3 : 2) + " in";
}

std::string degrees_in_sentence(double value_deg) {
    return figure_in_sentence(value_deg) + " degrees";
}

}  // namespace dartwright
