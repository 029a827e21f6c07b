#include "dartwright/pattern/press_sides.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// Points on a coarse grid, so that edges of no length and ways of one length come up; few names, so that
/// some recur, some lie on both sides of a dart, and some are not there.
Outline any_outline() {
    const auto any_point = [] { return Point{10.0 * *evenly(-3, 4), 10.0 * *evenly(-3, 4)}; };
    static const std::vector<std::string> names{"hem", "side", "top", "centre"};
    Outline outline{any_point(), {}};
    const int count = *evenly(1, 14);
    for (int k = 0; k < count; ++k) {
        if (*evenly(0, 3) == 0) {
            DartItem dart;
            dart.point = any_point();
            outline.items.push_back({dart, any_point()});
        } else {
            const auto name = static_cast<std::size_t>(*evenly(0, 4));
            outline.items.push_back({EdgeItem{names[name], StraightShape{}, 0}, any_point()});
        }
    }
    return outline;
}

// Whichever order darts and edges are asked in.
RC_GTEST_PROP(PressSides, SayWhatPressSideSaysOfEachDart, ()) {
    Outline outline = any_outline();
    PressSides sides(outline);
    int told = 0;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (!outline.items[i].as_dart()) continue;
        for (const char* edge : {"hem", "side", "top", "centre", "cuff"}) {
            Outline with_press = outline;
            with_press.items[i].as_dart()->press = edge;
            const std::optional<PressSide> side = press_side(with_press, i);
            RC_ASSERT(sides.towards(i, edge) == side);
            if (side) ++told;
        }
    }
    RC_CLASSIFY(told > 0, "a side is told");
}

// A lead on either side of the limit by less than sums of lengths are good to.
TEST(PressSides, walk_where_two_ways_are_equal_to_rounding) {
    for (const double more : {0.0, 0.4, 0.99, 1.0, 1.01, 1.6, 3.0}) {
        const double far = 100 + 0.5 * more * same_way_mm;
        const auto edge = [](const char* name, Point to) {
            return OutlineItem{EdgeItem{name, StraightShape{}, 0}, to};
        };
        DartItem dart;
        dart.point = {50, 50};
        dart.press = "top";
        const Outline outline{{0, 0},
                              {edge("hem", {50, 0}),
                               {dart, {50, 0}},
                               edge("hem", {far, 0}),
                               edge("top", {0, 50}),
                               edge("side", {0, 0})}};
        Outline even = outline;
        even.items[3].to = {0, 0};
        even.items.pop_back();
        EXPECT_EQ(PressSides(outline).towards(1, "top"), press_side(outline, 1)) << more;
        EXPECT_EQ(PressSides(even).towards(1, "top"), press_side(even, 1)) << more;
    }
}

}  // namespace
}  // namespace dartwright
