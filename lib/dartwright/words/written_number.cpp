#include "dartwright/words/written_number.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace dartwright {
namespace {

std::string written(double value, std::chars_format format, int precision) {
    // The largest double has so many digits before its point.
    std::string text(static_cast<std::size_t>(std::numeric_limits<double>::max_exponent10 + precision + 8),
                     '\0');
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, format, precision).ptr;
    text.resize(static_cast<std::size_t>(end - text.data()));
    return text;
}

void require_finite(double value) {
    if (!std::isfinite(value)) throw std::invalid_argument("a number to be written is not finite");
}

}  // namespace

double power_of_ten(int exponent) {
    constexpr int beyond_all = 400;
    const int steps = std::abs(std::clamp(exponent, -beyond_all, beyond_all));
    double power = 1;
    for (int k = 0; k < steps; ++k) power *= 10;
    return exponent < 0 ? 1 / power : power;
}

std::string with_decimals(double value, int decimals) {
    return written(value, std::chars_format::fixed, decimals);
}

std::string with_figures(double value, int figures) {
    return written(value, std::chars_format::general, figures);
}

std::string fixed_decimals(double value, int decimals) {
    require_finite(value);
    std::string words = with_decimals(value, decimals);
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

std::string decimal(double value) {
    if (value == 0) return "0";
    const double size = std::abs(value);
    if (size >= 1e-7 && size < 1e16) return plain_decimal(value);
    require_finite(value);
    std::array<char, 32> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific).ptr;
    return {text.data(), end};
}

std::string plain_decimal(double value) {
    require_finite(value);
    std::array<char, 400> text{};  // the longest double has 309 digits before its point
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed).ptr;
    return {text.data(), end};
}

double rounded_figure(double value) {
    constexpr double parts = 1e6;
    return std::abs(value) < 1e9 ? std::round(value * parts) / parts : value;
}

std::string figure_in_sentence(double exact) {
    const double value = rounded_figure(exact);
    if (std::abs(value) < 0.005) return "0";  // rounds to 0.00
    return with_decimals(value, std::abs(value) < 1 ? 2 : 1);
}

}  // namespace dartwright
