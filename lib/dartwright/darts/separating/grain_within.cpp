#include "dartwright/darts/separating/grain_within.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/elementary.hpp"

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

/// A line in the direction of the grain, and what is measured along it.
struct GrainLine {
    Point origin;
    Vector along;  ///< unit
};

/// Where the line comes nearer to a side than the margin: between the two places where its distance, which
/// falls and rises once, is the margin; empty if it stays farther away.
std::optional<Stretch> near_side(const GrainLine& line, Point a, Point b, double margin_mm) {
    const Vector left{-line.along.y, line.along.x};
    const double along_a = dot(a - line.origin, line.along);
    const double along_b = dot(b - line.origin, line.along);
    const double height_a = dot(a - line.origin, left);
    const double height_b = dot(b - line.origin, left);
    std::optional<Stretch> near;
    const auto add = [&near](double from, double to) {
        near = near ? Stretch{std::min(near->from, from), std::max(near->to, to)} : Stretch{from, to};
    };
    // The disc about each end, and the strip along the side between them.
    for (const auto& [place, height] : {std::pair{along_a, height_a}, std::pair{along_b, height_b}}) {
        if (std::abs(height) >= margin_mm) continue;
        const double half = std::sqrt(margin_mm * margin_mm - height * height);
        add(place - half, place + half);
    }
    const double length = hypotenuse(along_b - along_a, height_b - height_a);
    const double rise = height_b - height_a;
    if (rise == 0) return near;
    // A place of the line is beside the foot on the side at a share; it is the margin off where the share's
    // height is the margin times the cosine of the side's slope.
    const double run = along_b - along_a;
    for (const double off : {-margin_mm, margin_mm}) {
        const double foot_height = off * run / length;
        const double share = (foot_height - height_a) / rise;
        if (!(share >= 0 && share <= 1)) continue;
        const double at = along_a + share * run + off * rise / length;
        add(at, at);
    }
    return near;
}

/// The longest stretch of the line that is inside and keeps the margin from every side.
Stretch longest_clear(const std::vector<Point>& polygon, const GrainLine& line, double margin_mm,
                      Stretch within) {
    const Vector left{-line.along.y, line.along.x};
    std::vector<double> crossings;
    std::vector<Stretch> near;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Point b = polygon[(i + 1) % polygon.size()];
        if (const std::optional<Stretch> each = near_side(line, a, b, margin_mm)) near.push_back(*each);
        const double height_a = dot(a - line.origin, left);
        const double height_b = dot(b - line.origin, left);
        if ((height_a < 0) == (height_b < 0)) continue;
        const double share = height_a / (height_a - height_b);
        crossings.push_back(dot(a + share * (b - a) - line.origin, line.along));
    }
    std::sort(crossings.begin(), crossings.end());
    std::sort(near.begin(), near.end(), [](const Stretch& p, const Stretch& q) { return p.from < q.from; });
    Stretch longest;
    const auto offer = [&](double from, double to) {
        from = std::max(from, within.from);
        to = std::min(to, within.to);
        if (to - from > longest.to - longest.from + sum_rounding_mm) longest = {from, to};
    };
    for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
        double from = crossings[k];
        for (const Stretch& each : near) {
            if (each.to < from) continue;
            if (each.from > crossings[k + 1]) break;
            offer(from, each.from);
            from = each.to;
        }
        offer(from, crossings[k + 1]);
    }
    return longest;
}

std::array<double, 2> heights_across(const std::vector<Point>& polygon, Vector left) {
    std::array<double, 2> found{dot(polygon.front() - Point{}, left), dot(polygon.front() - Point{}, left)};
    for (const Point p : polygon) {
        const double height = dot(p - Point{}, left);
        found = {std::min(found[0], height), std::max(found[1], height)};
    }
    return found;
}

/// The middle two thirds.
Grain arrow_on(const GrainLine& line, Stretch stretch) {
    const double sixth = (stretch.to - stretch.from) / 6;
    return {line.origin + (stretch.from + sixth) * line.along,
            line.origin + (stretch.to - sixth) * line.along, ""};
}

Grain longest_of_nine(const std::vector<Point>& polygon, Vector along) {
    const Vector left{-along.y, along.x};
    const auto [from, to] = heights_across(polygon, left);
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
    return arrow_on({Point{} + best_offset * left, along}, best);
}

/// The longest arrow with the margin of many lines, the middle ones first; empty if it would be shorter than
/// four times the margin.
std::optional<Grain> clear_arrow(const std::vector<Point>& polygon, Vector along, double margin_mm) {
    const Vector left{-along.y, along.x};
    const auto [from, to] = heights_across(polygon, left);
    constexpr int lines = 65;
    constexpr double anywhere = 1e9;
    Stretch best;
    GrainLine best_line{{}, along};
    for (int k = 0; k < lines; ++k) {
        const double aside = (k % 2 == 0 ? 1 : -1) * ((k + 1) / 2);
        const double offset = (from + to) / 2 + aside * (to - from) / (lines - 1);
        const GrainLine line{Point{} + offset * left, along};
        const Stretch stretch = longest_clear(polygon, line, margin_mm, {-anywhere, anywhere});
        if (stretch.to - stretch.from <= best.to - best.from + sum_rounding_mm) continue;
        best = stretch;
        best_line = line;
    }
    if (best.to - best.from < 4 * margin_mm) return std::nullopt;
    return arrow_on(best_line, best);
}

}  // namespace

double grain_clearance(const std::vector<Point>& polygon, const Grain& grain) {
    if (where_in_polygon(polygon, grain.from) != Where::inside) return 0;
    double least = INFINITY;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Line side{polygon[i], polygon[(i + 1) % polygon.size()]};
        const Line arrow{grain.from, grain.to};
        if (meeting_of({arrow.a, arrow.b}, {side.a, side.b}) != Meeting::none) return 0;
        // Two stretches that do not cross are nearest at an end of one of them.
        for (const Point end : {grain.from, grain.to})
            least = std::min(least, closest_point(side, end).distance);
        for (const Point end : {side.a, side.b}) least = std::min(least, closest_point(arrow, end).distance);
    }
    return least;
}

std::optional<Grain> grain_kept_within(const std::vector<Point>& polygon, const Grain& grain,
                                       double clear_mm) {
    if (grain_clearance(polygon, grain) >= clear_mm - sum_rounding_mm) return grain;
    const double length = distance(grain.from, grain.to);
    const GrainLine line{grain.from, unit(grain.to - grain.from)};
    const Stretch clear = longest_clear(polygon, line, clear_mm, {0, length});
    if (clear.to - clear.from < std::max(length / 2, 4 * clear_mm)) return std::nullopt;
    return Grain{line.origin + clear.from * line.along, line.origin + clear.to * line.along, grain.along};
}

Grain grain_within(const std::vector<Point>& polygon, Vector direction) {
    const Vector along = unit(direction);
    const Grain longest = longest_of_nine(polygon, along);
    if (grain_clearance(polygon, longest) >= grain_clear_mm) return longest;
    for (const double margin_mm :
         {grain_clear_mm, grain_clear_mm / 2, grain_clear_mm / 4, grain_clear_mm / 8})
        if (const std::optional<Grain> clear = clear_arrow(polygon, along, margin_mm)) return *clear;
    return longest;
}

}  // namespace dartwright
