#include "dartwright/darts/grain_within.hpp"

#include <algorithm>

namespace dartwright {
namespace {

struct Stretch {
    double from = 0;
    double to = 0;
};

// The longest stretch inside the polygon of the line with this distance to the left of the origin.
Stretch longest_inside(const std::vector<Point>& polygon, Vector along, double offset) {
    const Vector left{-along.y, along.x};
    std::vector<double> crossings;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vector a = polygon[i] - Point{};
        const Vector b = polygon[(i + 1) % polygon.size()] - Point{};
        const double height_a = dot(a, left) - offset;
        const double height_b = dot(b, left) - offset;
        if ((height_a < 0) == (height_b < 0)) continue;
        const double share = height_a / (height_a - height_b);
        crossings.push_back(dot(a, along) + share * dot(b - a, along));
    }
    std::sort(crossings.begin(), crossings.end());
    Stretch longest;
    for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
        if (crossings[k + 1] - crossings[k] > longest.to - longest.from) {
            longest = {crossings[k], crossings[k + 1]};
        }
    }
    return longest;
}

}  // namespace

Grain grain_within(const std::vector<Point>& polygon, Vector direction) {
    const Vector along = unit(direction);
    const Vector left{-along.y, along.x};
    const auto [low, high] = std::minmax_element(polygon.begin(), polygon.end(), [&](Point a, Point b) {
        return dot(a - Point{}, left) < dot(b - Point{}, left);
    });
    const double from = dot(*low - Point{}, left);
    const double to = dot(*high - Point{}, left);
    // Kept away from the sides, where an arrow would lie in the seam; odd, so that the middle is among them.
    constexpr int lines = 9;
    Stretch best;
    double best_offset = (from + to) / 2;
    for (int k = 0; k < lines; ++k) {
        const double offset = from + (to - from) * (0.3 + 0.4 * k / (lines - 1));
        const Stretch stretch = longest_inside(polygon, along, offset);
        if (stretch.to - stretch.from <= best.to - best.from) continue;
        best = stretch;
        best_offset = offset;
    }
    const double sixth = (best.to - best.from) / 6;
    const Point on_line = Point{} + best_offset * left;
    return {on_line + (best.from + sixth) * along, on_line + (best.to - sixth) * along, ""};
}

}  // namespace dartwright
