#include "dartwright/checks/words.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace dartwright::words {

std::string number(double value) {
    if (std::abs(value) < 0.005) return "0";  // rounds to 0.00
    // Not as the locale has it, so that a program's choice of one does not change what is said.
    std::array<char, 400> text{};  // the longest double has 309 digits before its point
    const int decimals = std::abs(value) < 1 ? 2 : 1;
    return {
        text.data(),
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals).ptr};
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
