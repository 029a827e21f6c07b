#include "dartwright/pattern/outline_direction.hpp"

#include <algorithm>

namespace dartwright {
namespace {

/// Relative to the square of the outline's extent. The area's rounding is some 1e-13 of that square for a
/// thousand items; a real piece fills over a thousandth of it.
constexpr double area_in_doubt = 1e-9;

struct Extent {
    Point low;
    Point high;
    void take(Point p) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
};

/// Extent of everything that draws the outline, control points included.
Extent extent_of(const Outline& outline) {
    Extent extent{outline.start, outline.start};
    for (const OutlineItem& item : outline.items) {
        extent.take(item.to);
        if (const EdgeItem* edge = item.as_edge()) {
            if (const auto* cubic = std::get_if<CubicShape>(&edge->shape))
                for (const Point p : cubic->controls) extent.take(p);
            if (const auto* spline = std::get_if<SplineShape>(&edge->shape))
                for (const Point p : spline->through) extent.take(p);
            continue;
        }
        const DartItem& dart = *item.as_dart();
        extent.take(dart.point);
        if (!dart.legs) continue;
        for (const auto& leg : *dart.legs)
            for (const Point p : leg) extent.take(p);
    }
    return extent;
}

}  // namespace

bool is_clockwise(const Outline& outline) {
    const double area = signed_area(outline, DartsDrawn::to_points);
    if (area >= 0) return false;
    const Extent extent = extent_of(outline);
    return area < -area_in_doubt * squared_norm(extent.high - extent.low);
}

bool is_end_word(const std::string& name) {
    return name == "start" || name == "end";
}

std::string with_ends_swapped(const std::string& name) {
    return name == "start" ? "end" : name == "end" ? "start" : name;
}

}  // namespace dartwright
