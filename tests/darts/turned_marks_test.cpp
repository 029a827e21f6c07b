// Lines that are drawn in a piece while a dart is moved: divided and made one again, and nothing else.

#include <gtest/gtest.h>

#include "darts/plain_front.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/turning/turned_contents.hpp"

namespace dartwright {
namespace {

// A part that turns right of x = 50, in a piece 100 wide.
TurningPart right_half(double turn_rad) {
    TurningPart part;
    part.polygon = {{50, 0}, {100, 0}, {100, 100}, {50, 100}};
    part.held_polygon = {{0, 0}, {50, 0}, {50, 100}, {0, 100}};
    part.inner_borders = {{{50, 0}, {50, 100}}};
    part.motion = turn_about({50, 0}, turn_by(turn_rad));
    return part;
}

std::vector<Point> points_of(const Mark& mark) {
    return std::get<LineMark>(mark.what).points;
}

TEST(TurnedMarks, TwoLinesOfOneNameThatMeetStayTwo) {
    const std::vector<Mark> marks{{LineMark{{{10, 20}, {20, 20}}}, "line"},
                                  {LineMark{{{20, 20}, {30, 20}}}, "line"},
                                  {LineMark{{{80, 20}, {70, 20}}}, "line"},
                                  {LineMark{{{70, 20}, {60, 20}}}, "line"}};
    const std::vector<Mark> turned = turned_marks(marks, right_half(-0.1));
    ASSERT_EQ(turned.size(), 4u);
    EXPECT_EQ(turned[0], marks[0]);
    EXPECT_EQ(turned[1], marks[1]);
    const std::vector<Mark> back = turned_marks(turned, right_half(0));
    EXPECT_EQ(back, turned);
}

TEST(TurnedMarks, ALineThatIsDividedIsOneAgainOnTheWayBack) {
    const std::vector<Mark> marks{{LineMark{{{10, 20}, {90, 20}}}, "line"}};
    const std::vector<Mark> apart = turned_marks(marks, right_half(-0.1));
    ASSERT_EQ(apart.size(), 2u);
    TurningPart back = right_half(0);
    back.motion = turn_about({50, 0}, turn_by(0.1));
    for (Point& p : back.polygon) p = apply(turn_about({50, 0}, turn_by(-0.1)), p);
    back.inner_borders.clear();
    const std::vector<Mark> again = turned_marks(apart, back);
    ASSERT_EQ(again.size(), 1u);
    ASSERT_EQ(points_of(again[0]).size(), 2u);
    EXPECT_NEAR(distance(points_of(again[0])[0], {10, 20}), 0, 1e-9);
    EXPECT_NEAR(distance(points_of(again[0])[1], {90, 20}), 0, 1e-9);
}

// So many that comparing each with each would be 10^9 comparisons.
TEST(TurnedMarks, ThirtyThousandLinesOfOneNameAreEachThemselves) {
    std::vector<Mark> marks;
    for (int i = 0; i < 30000; ++i) {
        const double x = 1 + 0.001 * i;
        marks.push_back({LineMark{{{x, 20}, {x + 0.001, 20}}}, "line"});
    }
    EXPECT_EQ(turned_marks(marks, right_half(0.1)).size(), marks.size());
}

}  // namespace
}  // namespace dartwright
