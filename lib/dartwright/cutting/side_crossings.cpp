#include "dartwright/cutting/side_crossings.hpp"

namespace dartwright::cutting {
namespace {

// Of two in one place the one that was found first.
bool comes_before(const Passage& a, const Passage& b) {
    return a.along != b.along ? a.along < b.along : a.crossing < b.crossing;
}

}  // namespace

SideCrossings::SideCrossings(std::span<const Point> points)
    : points_(points),
      found_(all_self_crossings(points)),
      view_of_side_(points.size(), none),
      next_view_(2 * found_.size()) {
    for (std::size_t view = 0; view < next_view_.size(); ++view) {
        const MetSides& crossing = found_[view / 2];
        std::size_t& newest = view_of_side_[view % 2 == 0 ? crossing.first : crossing.second];
        next_view_[view] = newest;
        newest = view;
    }
}

Passage SideCrossings::passage(std::size_t side, std::size_t view) const {
    const Point place = place_of(found_[view / 2], points_);
    return {side, view / 2, squared_norm(place - points_[side]), place};
}

std::optional<Passage> SideCrossings::nearest(std::size_t side, const Passage* after) const {
    std::optional<Passage> best;
    for (std::size_t view = view_of_side_[side]; view != none; view = next_view_[view]) {
        const Passage here = passage(side, view);
        if (after && !comes_before(*after, here)) continue;
        if (!best || comes_before(here, *best)) best = here;
    }
    return best;
}

std::optional<Passage> SideCrossings::first_on(std::size_t side) const {
    return nearest(side, nullptr);
}

std::optional<Passage> SideCrossings::after(const Passage& last) const {
    return nearest(last.side, &last);
}

Passage SideCrossings::changed_over(const Passage& at) const {
    const MetSides& crossing = found_[at.crossing];
    const bool is_first = crossing.first == at.side;
    return passage(is_first ? crossing.second : crossing.first, 2 * at.crossing);
}

}  // namespace dartwright::cutting
