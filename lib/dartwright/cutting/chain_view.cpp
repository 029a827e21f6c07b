#include "dartwright/cutting/chain_view.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright::cutting {
namespace {

// So many sides of each chain are looked through; what crosses farther on is left to the clean-up.
constexpr std::size_t most_sides = 48;

// Where a line of no allowance is met by a ray from its corner both begin at one place, mm: far above
// rounding, which would decide.
constexpr double at_start_mm = 1e-9;

// A side that may be trimmed up to its middle only, because its other half belongs to the other joint.
double most_share(const ChainView& chain) {
    return chain.is_one_side() ? 0.5 : 1;
}

std::size_t sides_of(const ChainView& chain) {
    return std::min(chain.sides_to_trim(), most_sides);
}

}  // namespace

std::optional<ChainMeeting> meeting_of(const Ray& ray, const ChainView& chain, double reach_mm) {
    const auto aside = [&](Point p) { return cross(ray.along, p - ray.from); };
    const auto along = [&](Point p) { return dot(ray.along, p - ray.from); };
    const auto is_in_reach = [&](Point p) { return along(p) >= -at_start_mm && along(p) <= reach_mm; };
    // The extension leaves the chain with the direction `beyond`.
    const Point start = chain.at(0);
    const double closing_speed = -cross(ray.along, chain.beyond());
    if (std::abs(closing_speed) > 0) {
        const double distance = aside(start) / closing_speed;
        const Point place = start + distance * chain.beyond();
        const bool is_on_extension = distance >= -at_start_mm && distance <= reach_mm;
        if (is_on_extension && is_in_reach(place)) return ChainMeeting{0, place};
    }
    double last = aside(start);
    for (std::size_t side = 1; side <= sides_of(chain); ++side) {
        const double next = aside(chain.at(side));
        if ((last <= 0) != (next <= 0) || next == 0) {
            const double share = last == next ? 0 : last / (last - next);
            const Point place = between(chain.at(side - 1), chain.at(side), share);
            if (share <= most_share(chain) && is_in_reach(place)) return ChainMeeting{side, place};
        }
        last = next;
    }
    return std::nullopt;
}

std::optional<ChainCrossing> crossing_of(const ChainView& first, const ChainView& second) {
    for (std::size_t sum = 2; sum <= sides_of(first) + sides_of(second); ++sum) {
        const std::size_t low = sum > sides_of(second) ? sum - sides_of(second) : 1;
        for (std::size_t i = low; i <= std::min(sides_of(first), sum - 1); ++i) {
            const std::size_t j = sum - i;
            const Point a = first.at(i - 1);
            const Point c = second.at(j - 1);
            const Vector ab = first.at(i) - a;
            const Vector cd = second.at(j) - c;
            const double turn = cross(ab, cd);
            if (turn == 0) continue;
            const double on_first = cross(c - a, cd) / turn;
            const double on_second = cross(c - a, ab) / turn;
            if (on_first < 0 || on_first > most_share(first)) continue;
            if (on_second < 0 || on_second > most_share(second)) continue;
            return ChainCrossing{i, j, a + on_first * ab};
        }
    }
    return std::nullopt;
}

std::size_t side_beside(const ChainView& chain, Point p) {
    for (std::size_t side = 1; side <= sides_of(chain); ++side) {
        const Point a = chain.at(side - 1);
        const Vector along = chain.at(side) - a;
        const double share = std::clamp(dot(p - a, along) / squared_norm(along), 0.0, most_share(chain));
        if (squared_norm(p - (a + share * along)) <= cutting_line_error_mm * cutting_line_error_mm)
            return side;
    }
    return 0;
}

}  // namespace dartwright::cutting
