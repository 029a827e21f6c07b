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
            if (const Cubic* cubic = std::get_if<Cubic>(&curve)) stretches_.back().search.emplace(*cubic);
            item.length += part;
        }
        item.end = stretches_.size();
        item.sewn = item.length - outline.items[index].as_edge()->fullness;
        walked += item.sewn;
        items_.push_back(item);
    }
}

double RunTable::Stretch::parameter_at(double distance) const {
    return search ? search->parameter_at(distance) : dartwright::parameter_at(curve, distance);
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

RunTable::Along RunTable::along(double sewn_distance) const {
    const double wanted = std::clamp(sewn_distance, 0.0, run_length_);
    const Item& item = item_at(wanted);
    double along_item = 0;
    if (item.sewn > 0) {
        const double share_sewn = item.sewn / item.length;
        along_item = std::min((wanted - item.sewn_start) / share_sewn, item.length);
    }
    const Stretch& stretch = stretch_at(item, along_item);
    return {item, along_item, stretch, along_item - stretch.along};
}

RunPlace RunTable::place(double sewn_distance) const {
    const Along there = along(sewn_distance);
    const Stretch& stretch = there.stretch;
    const double t = there.along >= stretch.length ? 1 : stretch.parameter_at(there.along);
    RunPlace out;
    out.item = there.item.item;
    out.along_item = there.along_item;
    out.point = point_at(stretch.curve, t);
    out.tangent = tangent_at(stretch.curve, t);
    return out;
}

void RunTable::add_points(std::vector<Point>& points, const EvenPlaces& places) const {
    const Stretch* last = nullptr;
    PlaceSearch::Reached reached;
    for (int k = 0; k <= places.steps; ++k) {
        const double share = static_cast<double>(k) / places.steps;
        const Along there = along(places.from_mm + share * (places.to_mm - places.from_mm));
        const Stretch& stretch = there.stretch;
        if (&stretch != last) reached = {};
        last = &stretch;
        double t = 1;
        if (there.along < stretch.length)
            t = stretch.search ? stretch.search->parameter_after(reached, there.along)
                               : stretch.parameter_at(there.along);
        points.push_back(point_at(stretch.curve, t));
    }
}

}  // namespace dartwright
