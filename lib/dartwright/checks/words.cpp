#include "dartwright/checks/words.hpp"

namespace dartwright::words {

std::string at_joint(const std::vector<std::string>& edges, double sum_deg) {
    const bool is_one = edges.size() == 1;
    if (sum_deg > 180) return is_one ? "cuts in" : "cut in";
    return is_one ? "juts out" : "jut out";
}

}  // namespace dartwright::words
