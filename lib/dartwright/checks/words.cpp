#include "dartwright/checks/words.hpp"

#include <cmath>

#include "dartwright/geometry/written_number.hpp"

namespace dartwright::words {

std::string number(double value) {
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
