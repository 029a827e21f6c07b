#include "dartwright/pages/seen_parts.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// On a coarse grid, so that points are repeated, edges have no length, and paths touch windows.
Point any_point() {
    return {10.0 * *evenly(-8, 9), 10.0 * *evenly(-8, 9)};
}

DrawnPath any_path() {
    DrawnPath path;
    Point at = any_point();
    const int curves = *evenly(0, 12);
    for (int k = 0; k < curves; ++k) {
        const Point to = *evenly(0, 3) == 0 ? at + 0.1 * (any_point() - at) : any_point();
        if (*evenly(0, 2) == 0)
            path.curves.push_back(Line{at, to});
        else
            path.curves.push_back(
                Cubic{{at, at + 0.2 * (any_point() - at), to + 0.2 * (any_point() - to), to}});
        at = to;
    }
    path.is_closed = *evenly(0, 2) == 0;
    if (*evenly(0, 5) == 0) path.fill = Colour{200, 0, 0};
    if (*evenly(0, 6) > 0) {
        path.stroke = Stroke{{0, 0, 0}, 0.1 * *evenly(1, 30), {}};
        const int dashes = *evenly(0, 4);
        for (int k = 0; k < dashes; ++k) path.stroke->dash_mm.push_back(1.0 * *evenly(1, 6));
        if (dashes > 0) path.stroke->dash_begin_mm = 1.0 * *evenly(0, 4);
    }
    return path;
}

DrawnGroup any_group(int deep) {
    DrawnGroup group{"g" + std::to_string(deep), {}, {}};
    if (*evenly(0, 4) == 0) group.clip = Box{{-50, -50}, {50, 50}};
    const int items = *evenly(0, 5);
    for (int k = 0; k < items; ++k) {
        if (*evenly(0, 3) > 0) {
            group.items.push_back(any_path());
            continue;
        }
        DrawnText text;
        text.words = "waist dart";
        text.at = any_point();
        text.angle_rad = 0.1 * *evenly(0, 60);
        group.items.push_back(text);
    }
    for (int k = 0; deep > 0 && k < *evenly(0, 3); ++k) group.groups.push_back(any_group(deep - 1));
    return group;
}

std::string written(const DrawnGroup& group) {
    return to_svg(Drawing{100, 100, {}, "", {group}});
}

// Asked for at once and window by window.
RC_GTEST_PROP(SeenParts, OnTilesAreThoseThroughEachWindow, ()) {
    TileGrid grid{10.0 * *evenly(2, 9), 10.0 * *evenly(2, 9), 0, *evenly<std::size_t>(1, 7),
                  *evenly<std::size_t>(1, 7)};
    grid.overlap_mm = *evenly(0, 4) == 0 ? 0 : 0.5 * *evenly(0, 30);
    std::vector<Tile> tiles;
    for (std::size_t row = 0; row < grid.rows; ++row)
        for (std::size_t column = 0; column < grid.columns; ++column)
            if (*evenly(0, 5) > 0) tiles.push_back({row, column});
    const DrawnGroup group = moved(any_group(2), {0.5 * sheet_width(grid), -60});
    const std::vector<DrawnGroup> seen = seen_on_tiles(group, grid, tiles);
    RC_ASSERT(seen.size() == tiles.size());
    int shown = 0;
    for (std::size_t k = 0; k < tiles.size(); ++k) {
        const DrawnGroup alone = seen_through(group, window_of(grid, tiles[k]));
        RC_ASSERT(written(seen[k]) == written(alone));
        if (!alone.items.empty() || !alone.groups.empty()) ++shown;
    }
    RC_CLASSIFY(shown > 1, "on several tiles");
}

/// The path's curves with the line that closes it.
std::vector<Curve> ring_of(const DrawnPath& path) {
    std::vector<Curve> ring = path.curves;
    if (path.is_closed && end_of(ring.back()) != start_of(ring.front()))
        ring.push_back(Line{end_of(ring.back()), start_of(ring.front())});
    return ring;
}

bool is_in(const Box& box, Point p) {
    return p.x > box.low.x && p.x < box.high.x && p.y > box.low.y && p.y < box.high.y;
}

struct Drawn {
    std::vector<Curve> curves;
    std::vector<double> along;  ///< how far into the dashes each of them begins
    bool goes_round = false;
};

Drawn drawn(const DrawnPath& path) {
    Drawn all{ring_of(path), {}, path.is_closed};
    double along = path.stroke->dash_begin_mm;
    for (const Curve& curve : all.curves) {
        all.along.push_back(along);
        along += length(curve);
    }
    return all;
}

bool is_same_dash(double a, double b, const std::vector<double>& dashes) {
    double round = 0;
    for (const double dash : dashes) round += 2 * dash;
    return dashes.empty() || std::abs(std::remainder(a - b, round)) < 1e-6;
}

// What a window shows of a line is all that lies in it, as it lay in the whole: each curve with its dashes
// where they were, and each corner as a corner and no two ends.
RC_GTEST_PROP(SeenParts, OfALineAreAllThatTheWindowShows, ()) {
    DrawnPath path = any_path();
    path.fill.reset();
    if (!path.stroke) path.stroke = Stroke{{0, 0, 0}, 1, {}};
    RC_PRE(!path.curves.empty());
    const Point low = any_point();
    const Box window{low, low + Vector{10.0 * *evenly(1, 7), 10.0 * *evenly(1, 7)}};
    const Box inked = grown(window, 0.5 * path.stroke->width_mm);
    DrawnGroup group{"line", {path}, {}};
    const DrawnGroup seen = seen_through(group, window);
    std::vector<Drawn> parts;
    for (const DrawnItem& item : seen.items) {
        const DrawnPath& part = std::get<DrawnPath>(item);
        RC_ASSERT(!part.fill && part.stroke->dash_mm == path.stroke->dash_mm);
        parts.push_back(drawn(part));
    }
    const Drawn whole = drawn(path);
    const auto is_at = [&](const Drawn& part, std::size_t k, std::size_t curve) {
        return part.curves[k] == whole.curves[curve] &&
               is_same_dash(part.along[k], whole.along[curve], path.stroke->dash_mm);
    };
    std::size_t shown = 0;
    for (std::size_t i = 0; i < whole.curves.size(); ++i) {
        const auto shows = [&](const Drawn& part) {
            for (std::size_t k = 0; k < part.curves.size(); ++k)
                if (is_at(part, k, i)) return true;
            return false;
        };
        bool is_needed = false;
        for (const double t : {0.0, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0})
            is_needed = is_needed || is_in(inked, point_at(whole.curves[i], t));
        if (is_needed) RC_ASSERT(std::any_of(parts.begin(), parts.end(), shows));
        if (is_needed) ++shown;
        const std::size_t next = (i + 1) % whole.curves.size();
        if ((next == 0 && !path.is_closed) || !is_in(inked, end_of(whole.curves[i]))) continue;
        const auto goes_on = [&](const Drawn& part) {
            for (std::size_t k = 0; k < part.curves.size(); ++k) {
                const std::size_t after = (k + 1) % part.curves.size();
                if (after == 0 && !part.goes_round) continue;
                if (is_at(part, k, i) && is_at(part, after, next)) return true;
            }
            return false;
        };
        RC_ASSERT(std::any_of(parts.begin(), parts.end(), goes_on));
    }
    std::size_t written = 0;
    for (const Drawn& part : parts) written += part.curves.size();
    RC_ASSERT(written <= whole.curves.size());
    for (const Drawn& part : parts)
        for (const Curve& curve : part.curves)
            RC_ASSERT(std::any_of(whole.curves.begin(), whole.curves.end(),
                                  [&](const Curve& each) { return each == curve; }));
    RC_CLASSIFY(shown > 0 && written < whole.curves.size(), "some of it");
    RC_CLASSIFY(parts.size() > 1, "several stretches");
}

// A page of a long zigzag holds the few lines that cross it.
TEST(SeenParts, OfALongLineAreFew) {
    std::vector<Point> points;
    for (int k = 0; k <= 1000; ++k) points.push_back({1.0 * k, k % 2 == 0 ? 0.0 : 10.0});
    Stroke stroke{{0, 0, 0}, 0.5, {4, 2}};
    const DrawnGroup seen = seen_through({"line", {polyline(points, stroke)}, {}}, {{500, -5}, {510, 15}});
    ASSERT_EQ(seen.items.size(), 1u);
    const DrawnPath& part = std::get<DrawnPath>(seen.items.front());
    EXPECT_EQ(part.curves.size(), 12u);
    EXPECT_EQ(start_of(part.curves.front()), (Point{499, 10}));
    EXPECT_NEAR(part.stroke->dash_begin_mm, std::fmod(499 * std::sqrt(101.0), 12), 1e-6);
}

}  // namespace
}  // namespace dartwright
