#include "dartwright/words/converted_length.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string_view>

namespace dartwright {
namespace {

/// Significant digits of the shortest decimal.
std::size_t digits_of(double value) {
    std::array<char, 32> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific).ptr;
    const std::string_view words{text.data(), static_cast<std::size_t>(end - text.data())};
    const std::string_view mantissa = words.substr(0, words.find('e'));
    return static_cast<std::size_t>(
        std::count_if(mantissa.begin(), mantissa.end(), [](char c) { return c >= '0' && c <= '9'; }));
}

void require_finite(double value) {
    if (!std::isfinite(value))
        throw std::invalid_argument("a pattern file cannot hold a number that is not finite");
}

/// A number that to_mm rounds to `mm` is within 2^-53 of mm / k relatively, so within one step of doubles,
/// and the computed quotient is within half a step of mm / k: two steps on either side hold them all.
std::optional<double> fewest_digits(double mm, Unit unit) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const double quotient = mm / mm_in(unit);
    const double below = std::nextafter(quotient, -infinity);
    const double above = std::nextafter(quotient, infinity);
    const std::array<double, 5> near{quotient, below, above, std::nextafter(below, -infinity),
                                     std::nextafter(above, infinity)};
    std::optional<double> best;
    for (const double candidate : near) {
        if (to_mm(candidate, unit) != mm) continue;
        if (!best || digits_of(candidate) < digits_of(*best)) best = candidate;
    }
    return best;
}

}  // namespace

double to_mm(double in_unit, Unit unit) {
    return in_unit * mm_in(unit);
}

double from_mm(double mm, Unit unit) {
    require_finite(mm);
    if (unit == Unit::mm || mm == 0) return mm;
    if (const auto exact = fewest_digits(mm, unit)) return *exact;
    const double nearest = to_mm(mm / mm_in(unit), unit);
    return fewest_digits(nearest, unit).value_or(nearest / mm_in(unit));
}

}  // namespace dartwright
