#include "dartwright/drawing/drawing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

namespace dartwright {
namespace {

DrawnGroup group_of(const DrawnPath& path) {
    DrawnGroup group{"layer", {}, {}};
    group.items.push_back(path);
    return group;
}

TEST(drawing, circle_keeps_to_its_radius) {
    const Point centre{3, -4};
    const double radius = 12.5;
    const DrawnPath path = circle(centre, radius);
    ASSERT_EQ(path.curves.size(), 4u);
    EXPECT_TRUE(path.is_closed);
    double most = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(end_of(path.curves[i]), start_of(path.curves[(i + 1) % 4]));
        for (int step = 0; step <= 100; ++step)
            most =
                std::max(most, std::abs(distance(centre, point_at(path.curves[i], step / 100.0)) - radius));
    }
    EXPECT_LE(most, 2.8e-4 * radius);
    EXPECT_GE(most, 2.6e-4 * radius);  // the known error of this construction, so the bound is not idle
}

TEST(drawing, bounds_hold_paths_words_and_inner_layers) {
    DrawnGroup outer = group_of(polyline({{1, 2}, {5, 3}}, {}));
    EXPECT_EQ(bounds(outer)->low, (Point{1, 2}));
    EXPECT_EQ(bounds(outer)->high, (Point{5, 3}));
    outer.groups.push_back(group_of(polyline({{-7, 2}, {0, 9}}, {})));
    EXPECT_EQ(bounds(outer)->low, (Point{-7, 2}));
    EXPECT_EQ(bounds(outer)->high, (Point{5, 9}));
    DrawnText text;
    text.words = "waist";
    text.at = {20, 30};
    outer.items.push_back(text);
    EXPECT_GT(bounds(outer)->high.x, 20 + 5);
    EXPECT_NEAR(bounds(outer)->high.y, 30 + 0.76 * text.size_mm, 1e-9);
    EXPECT_FALSE(bounds(DrawnGroup{}).has_value());
}

TEST(drawing, bounds_follow_a_curve_and_not_its_control_points) {
    DrawnPath arch;
    arch.curves.push_back(Cubic{{{{0, 0}, {0, 100}, {100, 100}, {100, 0}}}});
    const Box box = bounds(group_of(arch)).value();
    EXPECT_NEAR(box.high.y, 75, 0.05);  // three quarters of the control points' height
    EXPECT_EQ(box.low, (Point{0, 0}));
    EXPECT_EQ(box.high.x, 100);
}

TEST(drawing, moving_shifts_all_layers) {
    DrawnGroup group = group_of(circle({0, 0}, 2));
    DrawnText text;
    text.at = {1, 1};
    group.groups.push_back({"inner", {}, {}});
    group.groups.back().items.push_back(text);
    const DrawnGroup shifted = moved(group, {10, -5});
    EXPECT_EQ(shifted.name, "layer");
    EXPECT_EQ(start_of(std::get<DrawnPath>(shifted.items[0]).curves[0]), (Point{12, -5}));
    EXPECT_EQ(std::get<DrawnText>(shifted.groups[0].items[0]).at, (Point{11, -4}));
}

TEST(drawing, refuses_what_no_writer_could_draw) {
    Drawing drawing;
    EXPECT_THROW(require_drawable(drawing), std::invalid_argument);
    drawing.width_mm = 100;
    drawing.height_mm = std::numeric_limits<double>::infinity();
    EXPECT_THROW(require_drawable(drawing), std::invalid_argument);
    drawing.height_mm = 50;
    EXPECT_NO_THROW(require_drawable(drawing));
    const double nan = std::numeric_limits<double>::quiet_NaN();
    drawing.groups.push_back({"outer", {}, {group_of(polyline({{0, 0}, {nan, 1}}, {}))}});
    EXPECT_THROW(require_drawable(drawing), std::invalid_argument);
    EXPECT_THROW(polyline({{0, 0}}, {}), std::invalid_argument);
    EXPECT_THROW(polygon({{0, 0}, {1, 1}}, {}), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
