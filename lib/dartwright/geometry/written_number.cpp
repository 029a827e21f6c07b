#include "dartwright/geometry/written_number.hpp"

#include <charconv>
#include <limits>

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

}  // namespace

std::string with_decimals(double value, int decimals) {
    return written(value, std::chars_format::fixed, decimals);
}

std::string with_figures(double value, int figures) {
    return written(value, std::chars_format::general, figures);
}

}  // namespace dartwright
