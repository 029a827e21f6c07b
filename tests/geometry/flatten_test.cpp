#include "dartwright/geometry/flatten.hpp"

#include <stdexcept>

#include "dartwright/geometry/closest.hpp"
#include "geometry/generators.hpp"

namespace dartwright {
namespace {

double distance_to(const std::vector<Point>& polyline, Point p) {
    double least = distance(polyline[0], p);
    for (std::size_t i = 1; i < polyline.size(); ++i) {
        least = std::min(least, closest_point(Line{polyline[i - 1], polyline[i]}, p).distance);
    }
    return least;
}

RC_GTEST_PROP(Flatten, stays_within_the_chord_error_both_ways, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    const double error = *generated::log_uniform(0.01, 100);
    const auto polyline = flattened(c, error);
    for (int i = 0; i <= 40; ++i) {
        RC_ASSERT(distance_to(polyline, point_at(c, i / 40.0)) <= error * (1 + 1e-9));
    }
    for (std::size_t i = 1; i < polyline.size(); ++i) {
        const Point p = between(polyline[i - 1], polyline[i], *generated::real(0, 1));
        RC_ASSERT(closest_point(c, p).distance <= error * (1 + 1e-9));
    }
}

RC_GTEST_PROP(Flatten, ends_are_the_curves_own, ()) {
    const Cubic c = *generated::cubic(300);
    const auto polyline = flattened(c, *generated::log_uniform(0.01, 100));
    RC_ASSERT(polyline.front() == c.p[0]);
    RC_ASSERT(polyline.back() == c.p[3]);
}

TEST(Flatten, points_grow_with_the_inverse_root) {
    const Cubic c{{Point{0, 0}, {100, 200}, {200, 200}, {300, 0}}};
    const auto coarse = static_cast<double>(flattened(c, 0.1).size());
    const auto fine = static_cast<double>(flattened(c, 0.001).size());
    EXPECT_NEAR(fine / coarse, 10, 0.5);
}

TEST(Flatten, lines_are_left_as_they_are) {
    EXPECT_EQ(flattened(Line{{0, 0}, {3, 4}}, 0.1), (std::vector<Point>{{0, 0}, {3, 4}}));
}

TEST(Flatten, refuses_an_error_of_nothing) {
    const Cubic c{{Point{0, 0}, {100, 200}, {200, 200}, {300, 0}}};
    EXPECT_THROW(flattened(c, 0), std::invalid_argument);
    EXPECT_THROW(flattened(c, -1), std::invalid_argument);
    EXPECT_THROW(flattened(c, 1e-30), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
