#include "dartwright/geometry/line_crossing.hpp"

#include "geometry/generators.hpp"

namespace dartwright {
namespace {

const DirectedLine upwards{{3, 0}, {0, 2}};  // its left is where x is less than 3

TEST(first_meeting, of_a_straight_line) {
    EXPECT_EQ(first_meeting(Line{{1, 5}, {5, 7}}, upwards), 0.5);
    EXPECT_EQ(first_meeting(Line{{1, 5}, {3, 7}}, upwards), 1);
    EXPECT_EQ(first_meeting(Line{{3, 5}, {1, 7}}, upwards), 0);
    EXPECT_EQ(first_meeting(Line{{4, 5}, {5, 7}}, upwards), 0) << "already beyond";
    EXPECT_FALSE(first_meeting(Line{{1, 5}, {2.9, 7}}, upwards));
}

// x = 3 - 9 (t - 1/4)(t - 1/2)(t - 1): met at 1/4, again at 1/2 and at 1.
TEST(first_meeting, of_a_cubic_that_meets_the_line_three_times_is_the_first) {
    // Bernstein form of (t - 1/4)(t - 1/2)(t - 1).
    const double values[] = {-1.0 / 8, 1.0 / 6, -1.0 / 8, 0};
    Cubic c;
    for (std::size_t i = 0; i < 4; ++i) c.p[i] = {3 + 9 * values[i], double(i)};
    const auto t = first_meeting(c, upwards);
    ASSERT_TRUE(t);
    EXPECT_NEAR(*t, 0.25, 1e-15);
}

// x = 3 - (t - 1/2)^2 and so far again to the left.
TEST(first_meeting, of_a_cubic_that_touches_the_line_or_passes_it_by) {
    const auto touching = [](double aside) {
        // Bernstein form of (t - 1/2)^2.
        const double values[] = {1.0 / 4, -1.0 / 12, -1.0 / 12, 1.0 / 4};
        Cubic c;
        for (std::size_t i = 0; i < 4; ++i) c.p[i] = {3 - aside - values[i], double(i)};
        return c;
    };
    const auto t = first_meeting(touching(0), upwards);
    ASSERT_TRUE(t);
    EXPECT_NEAR(*t, 0.5, 1e-5) << "where it is within 1e-11 mm of the line";
    EXPECT_FALSE(first_meeting(touching(1e-9), upwards));
    const auto crossing = first_meeting(touching(-1e-8), upwards);
    ASSERT_TRUE(crossing);
    EXPECT_NEAR(*crossing, 0.5 - 1e-4, 1e-10);
}

TEST(first_meeting, of_a_curve_along_the_line_is_its_start) {
    EXPECT_EQ(first_meeting(Cubic{{{{3, 0}, {3, 1}, {3, 2}, {3, 3}}}}, upwards), 0);
    EXPECT_EQ(first_meeting(Cubic{{{{3, 0}, {3, 0}, {3, 0}, {3, 0}}}}, upwards), 0);
}

// Nothing before the meeting is on the line or beyond it, and the meeting is on it.
RC_GTEST_PROP(FirstMeeting, is_on_the_line_and_has_nothing_before_it, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    const Turn turn = *generated::turn();
    const DirectedLine line{*generated::point(100), {turn.cosine, turn.sine}};
    const auto left = [&](double t) { return cross(line.along, point_at(c, t) - line.at); };
    const auto t = first_meeting(c, line);
    if (left(0) <= 0) {
        RC_ASSERT(t == 0.0);
        return;
    }
    if (t) RC_ASSERT(std::abs(left(*t)) <= 1e-11 * (1 + std::sqrt(squared_norm(derivative_at(c, *t)))));
    const double until = t.value_or(1);
    for (int k = 0; k < 1000; ++k) RC_ASSERT(left(until * k / 1000) > 0);
    RC_CLASSIFY(t.has_value(), "met");
}

}  // namespace
}  // namespace dartwright
