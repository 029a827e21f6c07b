#include "dartwright/cutting/whole_edges.hpp"

#include <cmath>

#include "dartwright/geometry/arc_length.hpp"

namespace dartwright::cutting {
namespace {

// An item of the outline and where it begins.
struct PlacedItem {
    Point start;
    const OutlineItem* item = nullptr;
};

struct Part {
    Point start;
    OutlineItem item;
    std::size_t number = 0;
};

PlacedItem placed(const Part& part) {
    return {part.start, &part.item};
}

const EdgeItem* divisible(const PlacedItem& placed) {
    const EdgeItem* edge = placed.item->as_edge();
    return edge && !std::holds_alternative<SplineShape>(edge->shape) ? edge : nullptr;
}

// Of a divisible item.
Curve curve_of(const PlacedItem& placed) {
    const auto* cubic = std::get_if<CubicShape>(&placed.item->as_edge()->shape);
    if (cubic) return Cubic{{placed.start, cubic->controls[0], cubic->controls[1], placed.item->to}};
    return Line{placed.start, placed.item->to};
}

bool are_gathered_alike(const EdgeItem& a, const Curve& along_a, const EdgeItem& b, const Curve& along_b) {
    if (a.fullness == 0 && b.fullness == 0) return true;
    const double length_a = length(along_a);
    const double length_b = length(along_b);
    return std::abs(a.fullness * length_b - b.fullness * length_a) <= whole_edge_mm * (length_a + length_b);
}

// The curve of which the two are parts, if there is one and both are of one run.
std::optional<Curve> whole_curve(const PlacedItem& first, const PlacedItem& second) {
    const EdgeItem* a = divisible(first);
    const EdgeItem* b = divisible(second);
    if (!a || !b || a->edge != b->edge) return std::nullopt;
    const Curve along_a = curve_of(first);
    const Curve along_b = curve_of(second);
    auto curve = joined(along_a, along_b, whole_edge_mm);
    if (curve && !are_gathered_alike(*a, along_a, *b, along_b)) curve.reset();
    return curve;
}

std::optional<Part> whole(const Part& first, const Part& second) {
    const auto curve = whole_curve(placed(first), placed(second));
    if (!curve) return std::nullopt;
    Part out = first;
    out.item.to = second.item.to;
    out.item.as_edge()->fullness += second.item.as_edge()->fullness;
    if (const auto* cubic = std::get_if<Cubic>(&*curve))
        out.item.as_edge()->shape = CubicShape{{cubic->p[1], cubic->p[2]}};
    return out;
}

// Whether two straight parts bend at their joint by so much that they are surely no one line.
bool surely_bend(Point a, Point joint, Point b) {
    const Vector along = b - a;
    constexpr double margin = 2;
    return std::abs(cross(along, joint - a)) >
           margin * whole_edge_mm * (std::abs(along.x) + std::abs(along.y));
}

// Nearly always there is nothing to join, which is seen without a look at any name.
bool surely_differ(const PlacedItem& first, const PlacedItem& second) {
    const EdgeItem* a = first.item->as_edge();
    const EdgeItem* b = second.item->as_edge();
    if (!a || !b || a->shape.index() != b->shape.index()) return true;
    const Point joint = first.item->to;
    return std::holds_alternative<StraightShape>(a->shape) && joint == second.start &&
           surely_bend(first.start, joint, second.item->to);
}

bool has_any_to_join(const Outline& outline) {
    if (outline.items.empty()) return false;
    PlacedItem last{start_of_item(outline, outline.items.size() - 1), &outline.items.back()};
    Point start = outline.start;
    for (const OutlineItem& item : outline.items) {
        const PlacedItem here{start, &item};
        if (!surely_differ(last, here) && whole_curve(last, here)) return true;
        last = here;
        start = item.to;
    }
    return false;
}

bool is_one_run(const std::vector<Part>& parts) {
    for (const Part& part : parts) {
        const EdgeItem* edge = part.item.as_edge();
        const EdgeItem* first = parts.front().item.as_edge();
        if (edge && first && edge->edge != first->edge) return false;
        if (!first) return false;
    }
    return true;
}

}  // namespace

std::optional<OutlineOfLength> with_whole_edges(const Outline& outline) {
    if (!has_any_to_join(outline)) return std::nullopt;
    std::vector<Part> parts;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const Part part{start_of_item(outline, i), outline.items[i], i};
        auto made = parts.empty() ? std::nullopt : whole(parts.back(), part);
        if (made)
            parts.back() = std::move(*made);
        else
            parts.push_back(part);
    }
    if (parts.size() > 1 && !is_one_run(parts)) {
        if (auto over_start = whole(parts.back(), parts.front())) {
            parts.front() = std::move(*over_start);
            parts.pop_back();
        }
    }
    if (parts.size() == outline.items.size()) return std::nullopt;
    OutlineOfLength out;
    out.outline.start = parts.front().start;
    for (Part& part : parts) {
        out.outline.items.push_back(std::move(part.item));
        out.items.push_back(part.number);
    }
    return out;
}

}  // namespace dartwright::cutting
