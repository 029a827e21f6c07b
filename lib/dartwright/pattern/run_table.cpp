#include "dartwright/pattern/run_table.hpp"

#include <algorithm>

#include "dartwright/geometry/arc_length.hpp"

namespace dartwright {

RunTable::RunTable(const Outline& outline, const Run& run) : run_length_(run.length) {
    items_.reserve(run.items.size());
    stretches_.reserve(run.items.size());
    double walked = 0;
    for (const std::size_t index : run.items) {
        Item item{index, stretches_.size(), 0, walked, 0, 0};
        for (const Curve& curve : curves_of_item(outline, index)) {
            const double part = length(curve);
            stretches_.push_back({curve, item.length, part, {}});
            if (std::holds_alternative<Cubic>(curve)) stretches_.back().table.emplace(curve, exact_table);
            item.length += part;
        }
        item.end = stretches_.size();
        item.sewn = item.length - outline.items[index].as_edge()->fullness;
        walked += item.sewn;
        items_.push_back(item);
    }
}

// At a joint the item that begins there, save at the run's end.
const RunTable::Item& RunTable::item_at(double sewn_distance) const {
    const auto after =
        std::upper_bound(items_.begin() + 1, items_.end(), sewn_distance,
                         [](double distance, const Item& item) { return distance < item.sewn_start; });
    return *std::prev(after);
}

// At a joint within an item the stretch that ends there.
const RunTable::Stretch& RunTable::stretch_at(const Item& item, double along_item) const {
    const auto first = stretches_.begin() + static_cast<std::ptrdiff_t>(item.first);
    const auto last = stretches_.begin() + static_cast<std::ptrdiff_t>(item.end) - 1;
    return *std::partition_point(first, last, [along_item](const Stretch& stretch) {
        return stretch.along + stretch.length < along_item;
    });
}

RunPlace RunTable::place(double sewn_distance) const {
    const double wanted = std::clamp(sewn_distance, 0.0, run_length_);
    const Item& item = item_at(wanted);
    RunPlace out;
    out.item = item.item;
    if (item.sewn > 0) {
        const double share_sewn = item.sewn / item.length;
        out.along_item = std::min((wanted - item.sewn_start) / share_sewn, item.length);
    }
    const Stretch& stretch = stretch_at(item, out.along_item);
    const double along = out.along_item - stretch.along;
    const double t = along >= stretch.length ? 1
                     : stretch.table         ? stretch.table->parameter_at(along)
                                             : parameter_at(stretch.curve, along);
    out.point = point_at(stretch.curve, t);
    out.tangent = tangent_at(stretch.curve, t);
    return out;
}

}  // namespace dartwright
