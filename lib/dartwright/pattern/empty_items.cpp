#include "dartwright/pattern/empty_items.hpp"

#include <algorithm>
#include <set>

namespace dartwright {
namespace {

bool is_near(Point a, Point b) {
    // Far apart, as nearly all are, they need no root.
    if (std::abs(b.x - a.x) > empty_item_mm || std::abs(b.y - a.y) > empty_item_mm) return false;
    return distance(a, b) <= empty_item_mm;
}

template <typename Points>
bool are_near(Point a, const Points& points) {
    return std::all_of(points.begin(), points.end(), [&](Point p) { return is_near(a, p); });
}

bool is_empty(const OutlineItem& item, Point start) {
    if (!is_near(start, item.to)) return false;
    const EdgeItem* edge = item.as_edge();
    if (!edge) return false;
    if (const auto* cubic = std::get_if<CubicShape>(&edge->shape)) return are_near(start, cubic->controls);
    if (const auto* spline = std::get_if<SplineShape>(&edge->shape)) return are_near(start, spline->through);
    return true;
}

// For each item whether it is spare.
std::vector<bool> spare_items(const Outline& outline) {
    std::vector<bool> is_spare(outline.items.size(), false);
    if (!has_empty_items(outline)) return is_spare;
    std::set<std::string> kept;  // runs that have an item already
    for (std::size_t i = 0; i < outline.items.size(); ++i)
        if (const EdgeItem* edge = outline.items[i].as_edge(); edge && !is_empty_item(outline, i))
            kept.insert(edge->edge);
    for (std::size_t i = 0; i < outline.items.size(); ++i)
        if (is_empty_item(outline, i)) is_spare[i] = !kept.insert(outline.items[i].as_edge()->edge).second;
    return is_spare;
}

OutlineOfLength without(const Outline& outline, const std::vector<bool>& left_out) {
    OutlineOfLength kept;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (left_out[i]) continue;
        kept.outline.items.push_back(outline.items[i]);
        kept.items.push_back(i);
    }
    const bool is_closed = !outline.items.empty() && outline.items.back().to == outline.start;
    kept.outline.start = kept.items.empty() ? outline.start : start_of_item(outline, kept.items.front());
    if (is_closed && !kept.items.empty()) kept.outline.items.back().to = kept.outline.start;
    return kept;
}

}  // namespace

bool is_empty_item(const Outline& outline, std::size_t item) {
    return is_empty(outline.items[item], start_of_item(outline, item));
}

bool has_empty_items(const Outline& outline) {
    Point start = outline.start;
    for (const OutlineItem& item : outline.items) {
        if (is_empty(item, start)) return true;
        start = item.to;
    }
    return false;
}

bool has_spare_items(const Outline& outline) {
    const std::vector<bool> is_spare = spare_items(outline);
    return std::find(is_spare.begin(), is_spare.end(), true) != is_spare.end();
}

bool has_spare_items(const Pattern& pattern) {
    return std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                       [](const Piece& piece) { return has_spare_items(piece.outline); });
}

OutlineOfLength without_spare_items(const Outline& outline) {
    return without(outline, spare_items(outline));
}

Pattern without_spare_items(const Pattern& pattern) {
    Pattern kept = pattern;
    for (Piece& piece : kept.pieces)
        if (has_spare_items(piece.outline)) piece.outline = without_spare_items(piece.outline).outline;
    return kept;
}

OutlineOfLength without_empty_items(const Outline& outline) {
    std::vector<bool> is_empty(outline.items.size());
    bool is_all = true;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        is_empty[i] = is_empty_item(outline, i);
        is_all = is_all && (is_empty[i] || outline.items[i].as_dart());
    }
    if (is_all) is_empty.assign(is_empty.size(), false);
    return without(outline, is_empty);
}

}  // namespace dartwright
