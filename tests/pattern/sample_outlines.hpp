#pragma once

// Small outlines of the workshop, typed by hand: every length and angle in them can be worked out in the
// head.

#include <string>
#include <utility>
#include <vector>

#include "dartwright/pattern/outline.hpp"

namespace dartwright::sample {

inline OutlineItem straight(std::string edge, Point to, double fullness = 0) {
    return {EdgeItem{std::move(edge), StraightShape{}, fullness}, to};
}
inline OutlineItem curved(std::string edge, Point to, std::array<Point, 2> handles) {
    return {EdgeItem{std::move(edge), CubicShape{handles}, 0}, to};
}
inline OutlineItem dart(std::string name, Point point, Point to) {
    DartItem item;
    item.name = std::move(name);
    item.point = point;
    return {item, to};
}

/// A front, 200 mm by 400 mm. Two waist darts of 3-4-5 triangles (legs 50, intake 60) stand in the waist
/// between stretches of 20, 10 and 30; the bust dart stands at the corner of side and armhole.
///
///     start (20, 0): the outline begins at a mouth, in the middle of the waist
inline Outline front() {
    Outline out;
    out.start = {20, 0};
    out.items = {dart("first", {50, 40}, {80, 0}),    straight("waist", {90, 0}),
                 dart("second", {120, 40}, {150, 0}), straight("waist", {180, 0}),
                 straight("side", {180, 200}),        dart("bust dart", {140, 230}, {180, 260}),
                 straight("armhole", {180, 400}),     straight("top", {0, 400}),
                 straight("centre front", {0, 0}),    straight("waist", {20, 0})};
    return out;
}

/// A square of 100 mm with four edges of these names, from the lower left corner.
inline Outline square(const std::vector<std::string>& names) {
    const Point corners[] = {{100, 0}, {100, 100}, {0, 100}, {0, 0}};
    Outline out;
    out.start = {0, 0};
    for (std::size_t i = 0; i < 4; ++i) out.items.push_back(straight(names.at(i), corners[i]));
    return out;
}

}  // namespace dartwright::sample
