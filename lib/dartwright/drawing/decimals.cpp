#include "dartwright/drawing/decimals.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include "dartwright/drawing/choice.hpp"

namespace dartwright {

namespace {

constexpr long parts_of_inch = 32;
/// A width this near to a fraction of an inch is that, mm: half of what four decimals of a centimetre round.
constexpr double is_fraction_mm = 0.01;

const char* unit_name(Unit unit) {
    return unit == Unit::mm ? "mm" : unit == Unit::cm ? "cm" : "in";
}

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

std::string fixed_decimals(double value, int decimals) {
    if (!std::isfinite(value)) throw std::invalid_argument("a number to be written is not finite");
    std::array<char, 400> text;  // the longest double has 309 digits before its point
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals).ptr;
    std::string words(text.data(), end);
    const bool is_zero = words.find_first_not_of("-0.") == std::string::npos;
    return is_zero && words.front() == '-' ? words.substr(1) : words;
}

std::string shortest_decimals(double value, int decimals) {
    std::string words = fixed_decimals(value, decimals);
    if (words.find('.') == std::string::npos) return words;
    words.erase(words.find_last_not_of('0') + 1);
    if (words.back() == '.') words.pop_back();
    return words;
}

std::string length_words(double length_mm, Unit unit) {
    // A tenth of a millimetre, or the hundredth of an inch: what can be laid off with a ruler and no more.
    const int decimals = unit == Unit::mm ? 1 : 2;
    return fixed_decimals(rounded_figure(length_mm / mm_in(unit)), decimals) + " " + unit_name(unit);
}

std::string ruler_figure(double length_mm, Unit unit) {
    if (unit == Unit::inch) return inch_fraction(length_mm);
    return fixed_decimals(rounded_figure(length_mm / mm_in(unit)), unit == Unit::mm ? 0 : 1);
}

std::string ruler_words(double length_mm, Unit unit) {
    return ruler_figure(length_mm, unit) + " " + unit_name(unit);
}

std::string width_in_unit(double width_mm, Unit unit) {
    if (unit != Unit::inch) return shortest_decimals(rounded_figure(width_mm / mm_in(unit)), 3);
    return (is_inch_fraction(width_mm) ? "" : "about ") + inch_fraction(width_mm);
}

std::string width_words(double width_mm, Unit unit) {
    std::string words;
    for (const char letter : width_in_unit(width_mm, unit) + " " + unit_name(unit))
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

std::string angle_words(double angle_rad) {
    return fixed_decimals(rounded_figure(degrees(angle_rad)), 1) + "\u00B0";
}

}  // namespace dartwright
