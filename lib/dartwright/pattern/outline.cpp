#include "dartwright/pattern/outline.hpp"

#include <algorithm>
#include <stdexcept>

#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/spline.hpp"
#include "dartwright/pattern/pattern_rules.hpp"

namespace dartwright {
namespace {

// Twice the area swept from `origin` along the curve (Green's theorem; exact for lines and cubics).
double swept(const Line& line, Point origin) {
    return cross(line.a - origin, line.b - origin);
}

double swept(const Cubic& cubic, Point origin) {
    const auto& c = cubic.p;
    const Vector a = c[0] - origin;
    const Vector b = c[1] - origin;
    const Vector d = c[2] - origin;
    const Vector e = c[3] - origin;
    return (6 * cross(a, b) + 3 * cross(a, d) + cross(a, e) + 3 * cross(b, d) + 3 * cross(b, e) +
            6 * cross(d, e)) /
           10;
}

double swept(const Curve& curve, Point origin) {
    const auto* line = std::get_if<Line>(&curve);
    return line ? swept(*line, origin) : swept(std::get<Cubic>(curve), origin);
}

std::vector<Curve> drawn_curves(const Outline& outline, std::size_t index, DartsDrawn darts) {
    const OutlineItem& item = outline.items[index];
    const Point start = start_of_item(outline, index);
    if (const EdgeItem* edge = item.as_edge()) return curves_of(*edge, start, item.to);
    if (darts == DartsDrawn::to_pivots) {
        const Point pivot = item.as_dart()->turning_point();
        return {Line{start, pivot}, Line{pivot, item.to}};
    }
    const Legs legs = legs_of_item(outline, index);
    return {legs.to_point, legs.from_point};
}

Shape reversed_shape(const Shape& shape) {
    if (const auto* cubic = std::get_if<CubicShape>(&shape)) {
        return CubicShape{{cubic->controls[1], cubic->controls[0]}};
    }
    if (const auto* spline = std::get_if<SplineShape>(&shape)) {
        SplineShape out = *spline;
        std::reverse(out.through.begin(), out.through.end());
        return out;
    }
    return shape;
}

OutlineItem reversed_item(const OutlineItem& item, Point to) {
    OutlineItem out = item;
    out.to = to;
    if (EdgeItem* edge = out.as_edge()) edge->shape = reversed_shape(edge->shape);
    if (DartItem* dart = out.as_dart(); dart && dart->legs) {
        const auto legs = *dart->legs;
        dart->legs = {{{legs[1][1], legs[1][0]}, {legs[0][1], legs[0][0]}}};
    }
    return out;
}

}  // namespace

Point start_of_item(const Outline& outline, std::size_t index) {
    return index == 0 ? outline.start : outline.items.at(index - 1).to;
}

std::vector<Curve> curves_of(const EdgeItem& item, Point start, Point end) {
    if (const auto* cubic = std::get_if<CubicShape>(&item.shape)) {
        return {Cubic{{start, cubic->controls[0], cubic->controls[1], end}}};
    }
    if (const auto* spline = std::get_if<SplineShape>(&item.shape)) {
        std::vector<Point> points{start};
        points.insert(points.end(), spline->through.begin(), spline->through.end());
        points.push_back(end);
        const std::vector<Cubic> cubics = spline_through(points);
        return {cubics.begin(), cubics.end()};
    }
    return {Line{start, end}};
}

std::vector<Curve> curves_of_item(const Outline& outline, std::size_t index) {
    const OutlineItem& item = outline.items.at(index);
    const EdgeItem* edge = item.as_edge();
    if (!edge) throw std::invalid_argument("the item of the outline is a dart, not an edge");
    return curves_of(*edge, start_of_item(outline, index), item.to);
}

Legs legs_of_item(const Outline& outline, std::size_t index) {
    const OutlineItem& item = outline.items.at(index);
    const DartItem* dart = item.as_dart();
    if (!dart) throw std::invalid_argument("the item of the outline is an edge, not a dart");
    const Point a = start_of_item(outline, index);
    if (!dart->legs) return {Line{a, dart->point}, Line{dart->point, item.to}};
    const auto& legs = *dart->legs;
    return {Cubic{{a, legs[0][0], legs[0][1], dart->point}},
            Cubic{{dart->point, legs[1][0], legs[1][1], item.to}}};
}

double length_of_item(const Outline& outline, std::size_t index) {
    double sum = 0;
    for (const Curve& curve : curves_of_item(outline, index)) sum += length(curve);
    return sum;
}

double sewn_length_of_item(const Outline& outline, std::size_t index) {
    return length_of_item(outline, index) - outline.items[index].as_edge()->fullness;
}

FlatOutline flat_outline(const Outline& outline, DartsDrawn darts, double chord_error_mm) {
    FlatOutline out;
    out.points.push_back(outline.start);
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        for (const Curve& curve : drawn_curves(outline, i, darts)) {
            flatten_onto(out.points, curve, chord_error_mm);
        }
        out.item_of_side.resize(out.points.size() - 1, i);
    }
    if (out.points.size() > 1 && out.points.back() == out.points.front()) {
        out.points.pop_back();
    } else {
        out.item_of_side.push_back(outline.items.empty() ? 0 : outline.items.size() - 1);
    }
    return out;
}

double gap_of(const Outline& outline) {
    return outline.items.empty() ? 0 : distance(outline.items.back().to, outline.start);
}

Outline with_gap_closed(Outline outline) {
    if (outline.items.empty()) return outline;
    outline.items.back().to = outline.start;
    EdgeItem* edge = outline.items.back().as_edge();
    auto* spline = edge ? std::get_if<SplineShape>(&edge->shape) : nullptr;
    if (!spline) return outline;
    std::vector<Point>& through = spline->through;
    while (!through.empty() && distance(through.back(), outline.start) < least_measured_distance_mm)
        through.pop_back();
    if (through.empty()) edge->shape = StraightShape{};
    return outline;
}

Outline reversed(const Outline& outline) {
    Outline out;
    if (outline.items.empty()) return outline;
    out.start = outline.items.back().to;
    for (std::size_t i = outline.items.size(); i-- > 0;) {
        out.items.push_back(reversed_item(outline.items[i], start_of_item(outline, i)));
    }
    return out;
}

double signed_area(const Outline& outline, DartsDrawn darts) {
    double twice = 0;
    Point end = outline.start;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const Point start = end;
        end = outline.items[i].to;
        // Most items are one line or cubic, for which no list is made.
        const EdgeItem* edge = outline.items[i].as_edge();
        if (edge && !std::holds_alternative<SplineShape>(edge->shape)) {
            const auto* cubic = std::get_if<CubicShape>(&edge->shape);
            twice += cubic ? swept(Cubic{{start, cubic->controls[0], cubic->controls[1], end}}, outline.start)
                           : swept(Line{start, end}, outline.start);
            continue;
        }
        for (const Curve& curve : drawn_curves(outline, i, darts)) twice += swept(curve, outline.start);
    }
    return twice / 2;
}

}  // namespace dartwright
