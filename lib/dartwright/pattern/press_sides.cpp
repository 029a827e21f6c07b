#include "dartwright/pattern/press_sides.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {

const std::vector<std::size_t>& PressSides::items_of(const std::string& edge) {
    const auto [found, is_new] = items_.try_emplace(edge);
    if (!is_new) return found->second;
    for (std::size_t i = 0; i < outline_.items.size(); ++i) {
        const EdgeItem* item = outline_.items[i].as_edge();
        if (item && item->edge == edge) found->second.push_back(i);
    }
    return found->second;
}

double PressSides::lead_mm(std::size_t dart, const std::vector<std::size_t>& of_edge) const {
    const double whole = walked_.back();
    const auto after = std::upper_bound(of_edge.begin(), of_edge.end(), dart);
    const double going_on = after != of_edge.end() ? walked_[*after] - walked_[dart]
                                                   : walked_[of_edge.front()] + whole - walked_[dart];
    const double going_back = after != of_edge.begin() ? walked_[dart] - walked_[*(after - 1) + 1]
                                                       : walked_[dart] + whole - walked_[of_edge.back() + 1];
    return going_back - going_on;
}

std::optional<PressSide> PressSides::towards(std::size_t dart, const std::string& edge) {
    if (walked_.empty()) {
        walked_.push_back(0);
        for (std::size_t i = 0; i < outline_.items.size(); ++i)
            walked_.push_back(walked_.back() +
                              (outline_.items[i].as_edge() ? length_of_item(outline_, i) : 0));
    }
    const std::vector<std::size_t>& of_edge = items_of(edge);
    if (of_edge.empty()) return std::nullopt;
    double lead = lead_mm(dart, of_edge);
    // Sums of one outline taken in another order differ by far less than this.
    constexpr double rounding_of_sums_mm = 0.5 * same_way_mm;
    if (std::abs(std::abs(lead) - same_way_mm) < rounding_of_sums_mm)
        lead = lead_after_mm(outline_, dart, edge);
    if (std::abs(lead) <= same_way_mm) return std::nullopt;
    return lead > 0 ? PressSide::after : PressSide::before;
}

}  // namespace dartwright
