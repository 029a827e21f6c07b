#include "dartwright/drawing/decimals.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace dartwright {

std::string fixed_decimals(double value, int decimals) {
    if (!std::isfinite(value)) throw std::invalid_argument("a number to be written is not finite");
    std::array<char, 400> text{};  // the longest double has 309 digits before its point
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
    const char* name = unit == Unit::mm ? " mm" : unit == Unit::cm ? " cm" : " in";
    return fixed_decimals(length_mm / mm_in(unit), decimals) + name;
}

std::string angle_words(double angle_rad) {
    return fixed_decimals(degrees(angle_rad), 1) + "\u00B0";
}

}  // namespace dartwright
