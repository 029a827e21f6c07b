#include "dartwright/geometry/motion.hpp"

#include <array>

#include "geometry/generators.hpp"

namespace dartwright {
namespace {

// Eight units in the last place of the largest coordinate involved.
double rounding_of(double size) {
    return 8 * size * 2.220446049250313e-16;
}

RC_GTEST_PROP(Motion, keeps_distances, ()) {
    const double size = *generated::size();
    const Motion m = *generated::motion(size);
    const Point a = *generated::point(size);
    const Point b = *generated::point(size);
    // A moved coordinate is at most (1 + sqrt 2) times the size.
    RC_ASSERT(std::abs(distance(apply(m, a), apply(m, b)) - distance(a, b)) <= rounding_of(2.5 * size));
}

RC_GTEST_PROP(Motion, is_undone_by_its_inverse, ()) {
    const Motion m = *generated::motion(1000);
    const Point a = *generated::point(1000);
    RC_ASSERT(distance(apply(inverse(m), apply(m, a)), a) <= rounding_of(3000));
    RC_ASSERT(distance(apply(then(m, inverse(m)), a), a) <= rounding_of(3000));
}

RC_GTEST_PROP(Motion, then_applies_one_after_the_other, ()) {
    const Motion first = *generated::motion(1000);
    const Motion second = *generated::motion(1000);
    const Point a = *generated::point(1000);
    RC_ASSERT(distance(apply(then(first, second), a), apply(second, apply(first, a))) <= rounding_of(5000));
}

RC_GTEST_PROP(Motion, turn_about_keeps_its_centre, ()) {
    const Point centre = *generated::point(1000);
    RC_ASSERT(distance(apply(turn_about(centre, *generated::turn()), centre), centre) <= rounding_of(2000));
}

RC_GTEST_PROP(Motion, between_pairs_of_points_takes_one_to_the_other, ()) {
    const Motion m = *generated::motion(1000);
    const PairOfPoints from{*generated::point(1000), *generated::point(1000)};
    RC_PRE(distance(from.first, from.second) > 1);
    const PairOfPoints to{apply(m, from.first), apply(m, from.second)};
    const Motion found = motion_between(from, to);
    RC_ASSERT(distance(apply(found, from.first), to.first) <= 1e-11);
    RC_ASSERT(distance(apply(found, from.second), to.second) <= 1e-11);
}

RC_GTEST_PROP(Motion, best_fit_finds_the_motion, ()) {
    const Motion m = *generated::motion(1000);
    const auto from = *rc::gen::container<std::vector<Point>>(5, generated::point(1000));
    RC_PRE(distance(from[0], from[1]) > 1);
    std::vector<Point> to;
    for (const Point p : from) to.push_back(apply(m, p));
    const Motion found = best_fit(from, to);
    for (std::size_t i = 0; i < from.size(); ++i) RC_ASSERT(distance(apply(found, from[i]), to[i]) <= 1e-9);
}

TEST(Motion, refuses_directions_that_are_zero) {
    EXPECT_THROW(turn_between({0, 0}, {1, 0}), std::invalid_argument);
    EXPECT_THROW(turn_between({1, 0}, {0, 0}), std::invalid_argument);
    EXPECT_THROW(best_fit({}, {}), std::invalid_argument);
}

TEST(Motion, turn_has_the_sign_of_anticlockwise) {
    EXPECT_NEAR(angle(turn_about({5, 5}, turn_between({1, 0}, {0, 2}))), pi / 2, 1e-15);
    const std::array from{Point{1, 1}};
    const std::array to{Point{4, 5}};
    EXPECT_EQ(best_fit(from, to), shift_by({3, 4}));
}

}  // namespace
}  // namespace dartwright
