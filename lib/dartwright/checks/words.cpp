#include "dartwright/checks/words.hpp"

#include <cmath>

#include "dartwright/geometry/written_number.hpp"

namespace dartwright::words {

namespace {

/// Halves of the last decimal are halves then, whatever rounding made of them: 11.25 is written alike.
double without_last_bits(double value) {
    constexpr double parts = 1e6;
    return std::abs(value) < 1e9 ? std::round(value * parts) / parts : value;
}

}  // namespace

std::string number(double exact) {
    const double value = without_last_bits(exact);
    if (std::abs(value) < 0.005) return "0";  // rounds to 0.00
    return with_decimals(value, std::abs(value) < 1 ? 2 : 1);
}

std::string mm(double value) {
    return number(value) + " mm";
}

std::string degrees(double value) {
    return number(value) + " degrees";
}

std::string list(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
        text += names[i];
    }
    return text;
}

std::string at_joint(const std::vector<std::string>& edges, double sum_deg) {
    const bool is_one = edges.size() == 1;
    if (sum_deg > 180) return is_one ? "cuts in" : "cut in";
    return is_one ? "juts out" : "jut out";
}

}  // namespace dartwright::words
