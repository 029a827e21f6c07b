#include "dartwright/geometry/closest.hpp"

#include "geometry/generators.hpp"

namespace dartwright {
namespace {

void expect_nearest(const Curve& c, Point p) {
    const ClosestPoint found = closest_point(c, p);
    RC_ASSERT(point_at(c, found.parameter) == found.point);
    RC_ASSERT(std::abs(distance(found.point, p) - found.distance) <= 1e-12);
    for (int i = 0; i <= 2000; ++i) RC_ASSERT(found.distance <= distance(point_at(c, i / 2000.0), p) + 1e-9);
}

RC_GTEST_PROP(Closest, no_sample_is_nearer, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    expect_nearest(c, *generated::point(*generated::log_uniform(1, 1e4)));
}

RC_GTEST_PROP(Closest, a_point_of_the_curve_is_at_no_distance, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    RC_ASSERT(closest_point(c, point_at(c, *generated::real(0, 1))).distance <= 1e-9);
}

// A short flat arc seen from its centre: every point is nearly equally near.
RC_GTEST_PROP(Closest, flat_arcs_about_the_point, ()) {
    const double angle = *generated::log_uniform(1e-6, 1);
    const double handle = 4.0 / 3 * std::tan(angle / 4);
    const Vector a{100, 0};
    const Vector b = apply(turn_by(angle), a);
    const Cubic c{{Point{} + a, Point{} + (a + handle * perpendicular(a)),
                   Point{} + (b - handle * perpendicular(b)), Point{} + b}};
    expect_nearest(c, {0, 0});
}

TEST(Closest, line) {
    const Line line{{0, 0}, {10, 0}};
    EXPECT_EQ(closest_point(line, {4, 3}).parameter, 0.4);
    EXPECT_EQ(closest_point(line, {4, 3}).distance, 3);
    EXPECT_EQ(closest_point(line, {-3, 4}).distance, 5);
    EXPECT_EQ(closest_point(line, {13, 4}).parameter, 1);
    EXPECT_EQ(closest_point(Line{{1, 1}, {1, 1}}, {4, 5}).distance, 5);
}

TEST(Closest, first_of_two_equally_near) {
    const Cubic c{{Point{-10, 0}, {-10, 40}, {10, 40}, {10, 0}}};
    EXPECT_EQ(closest_point(c, {0, -5}).parameter, 0);
}

TEST(Closest, one_point) {
    EXPECT_EQ(closest_point(Cubic{{Point{1, 1}, {1, 1}, {1, 1}, {1, 1}}}, {4, 5}).distance, 5);
}

}  // namespace
}  // namespace dartwright
