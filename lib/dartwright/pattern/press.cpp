#include "dartwright/pattern/press.hpp"

#include <cmath>
#include <stdexcept>

namespace dartwright {

double lead_after_mm(const Outline& outline, std::size_t dart, const std::string& edge) {
    const std::size_t n = outline.items.size();
    const auto walked_to_edge = [&](std::size_t step) {
        double walked = 0;
        for (std::size_t k = 1; k < n; ++k) {
            const std::size_t i = (dart + k * step) % n;
            const EdgeItem* item = outline.items[i].as_edge();
            if (!item) continue;
            if (item->edge == edge) break;
            walked += length_of_item(outline, i);
        }
        return walked;
    };
    return walked_to_edge(n - 1) - walked_to_edge(1);
}

std::optional<PressSide> press_side(const Outline& outline, std::size_t dart) {
    const DartItem* item = outline.items.at(dart).as_dart();
    if (!item) throw std::invalid_argument("the item of the outline is an edge, not a dart");
    if (item->press.empty()) return std::nullopt;
    const double lead = lead_after_mm(outline, dart, item->press);
    if (std::abs(lead) <= same_way_mm) return std::nullopt;
    return lead > 0 ? PressSide::after : PressSide::before;
}

}  // namespace dartwright
