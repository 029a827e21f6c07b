#include "dartwright/pattern/press.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

// A panel with its dart 30 from the centre and 130 from the side, in a hem of 200.
Outline panel(const std::string& press) {
    const auto edge = [](const char* name, Point to) {
        return OutlineItem{EdgeItem{name, StraightShape{}, 0}, to};
    };
    DartItem dart;
    dart.name = "dart";
    dart.point = {50, 100};
    dart.press = press;
    return {{0, 0},
            {edge("hem", {30, 0}),
             {dart, {70, 0}},
             edge("hem", {200, 0}),
             edge("side", {200, 300}),
             edge("top", {0, 300}),
             edge("centre", {0, 0})}};
}

TEST(press_side, is_that_from_which_the_edge_is_reached_first) {
    EXPECT_EQ(press_side(panel("centre"), 1), PressSide::before);
    EXPECT_EQ(press_side(panel("side"), 1), PressSide::after);
    // 130 + 300 from the one end, 30 + 300 from the other.
    EXPECT_EQ(press_side(panel("top"), 1), PressSide::before);
    EXPECT_DOUBLE_EQ(lead_after_mm(panel(""), 1, "top"), -100);
    EXPECT_DOUBLE_EQ(lead_after_mm(panel(""), 1, "side"), 200 + 330 - 130);
}

TEST(press_side, is_not_known_where_nothing_tells_the_sides_apart) {
    EXPECT_EQ(press_side(panel(""), 1), std::nullopt);
    EXPECT_EQ(press_side(panel("hem"), 1), std::nullopt) << "the dart stands in it";
    EXPECT_EQ(press_side(panel("cuff"), 1), std::nullopt) << "no such edge";
    Outline even = panel("top");
    even.items[2].to.x = even.items[3].to.x = 100;
    EXPECT_EQ(press_side(even, 1), std::nullopt) << "equally far both ways";
    EXPECT_THROW(press_side(even, 0), std::invalid_argument);
}

TEST(press_side, of_a_dart_in_a_corner_may_be_one_of_its_own_edges) {
    Outline outline = panel("hem");
    outline.items[2].as_edge()->edge = "train";
    EXPECT_EQ(press_side(outline, 1), PressSide::before);
    outline.items[1].as_dart()->press = "train";
    EXPECT_EQ(press_side(outline, 1), PressSide::after);
}

}  // namespace
}  // namespace dartwright
