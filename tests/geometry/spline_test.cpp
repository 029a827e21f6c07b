#include "dartwright/geometry/spline.hpp"

#include <array>
#include <stdexcept>

#include "geometry/generators.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

rc::Gen<std::vector<Point>> measured_points() {
    return rc::gen::mapcat(testing::evenly<std::size_t>(2, 9), [](std::size_t n) {
        return rc::gen::suchThat(rc::gen::container<std::vector<Point>>(n, generated::point(300)),
                                 [](const std::vector<Point>& p) {
                                     for (std::size_t i = 1; i < p.size(); ++i) {
                                         if (distance(p[i - 1], p[i]) < 1) return false;
                                     }
                                     return true;
                                 });
    });
}

double width_of(const Cubic& c) {
    return std::sqrt(distance(c.p[0], c.p[3]));
}
Vector second_at_start(const Cubic& c) {
    return 6 * ((c.p[0] - c.p[1]) + (c.p[2] - c.p[1]));
}
Vector second_at_end(const Cubic& c) {
    return 6 * ((c.p[1] - c.p[2]) + (c.p[3] - c.p[2]));
}

RC_GTEST_PROP(Spline, goes_through_the_points, ()) {
    const auto points = *measured_points();
    const auto spans = spline_through(points);
    RC_ASSERT(spans.size() + 1 == points.size());
    for (std::size_t i = 0; i < spans.size(); ++i) {
        RC_ASSERT(spans[i].p[0] == points[i]);
        RC_ASSERT(spans[i].p[3] == points[i + 1]);
    }
}

RC_GTEST_PROP(Spline, has_two_derivatives_at_joints_and_natural_ends, ()) {
    const auto spans = spline_through(*measured_points());
    // By the centripetal parameter, of which a span is the root of its chord wide; of mm^(1/2) and mm^0.
    for (std::size_t i = 1; i < spans.size(); ++i) {
        const double before = width_of(spans[i - 1]);
        const double after = width_of(spans[i]);
        RC_ASSERT(norm(derivative_at(spans[i - 1], 1) / before - derivative_at(spans[i], 0) / after) <= 1e-9);
        RC_ASSERT(norm(second_at_end(spans[i - 1]) / (before * before) -
                       second_at_start(spans[i]) / (after * after)) <= 1e-8);
    }
    RC_ASSERT(norm(second_at_start(spans.front())) <= 1e-9);
    RC_ASSERT(norm(second_at_end(spans.back())) <= 1e-9);
}

RC_GTEST_PROP(Spline, moves_with_its_points, ()) {
    const auto points = *measured_points();
    const Motion m = *generated::motion(1000);
    std::vector<Point> moved_points;
    for (const Point p : points) moved_points.push_back(apply(m, p));
    const auto spans = spline_through(points);
    const auto moved_spans = spline_through(moved_points);
    for (std::size_t i = 0; i < spans.size(); ++i) {
        for (std::size_t k = 0; k < 4; ++k) {
            RC_ASSERT(distance(apply(m, spans[i].p[k]), moved_spans[i].p[k]) <= 1e-9);
        }
    }
}

TEST(Spline, through_two_points_is_straight_and_even) {
    const std::array points{Point{0, 0}, Point{3, 6}};
    const auto spans = spline_through(points);
    ASSERT_EQ(spans.size(), 1u);
    EXPECT_LT(distance(spans[0].p[1], {1, 2}), 1e-14);
    EXPECT_LT(distance(spans[0].p[2], {2, 4}), 1e-14);
}

TEST(Spline, refuses_points_it_cannot_join) {
    const double nan = std::nan("");
    EXPECT_THROW(spline_through({}), std::invalid_argument);
    EXPECT_THROW(spline_through(std::vector<Point>{{1, 1}}), std::invalid_argument);
    EXPECT_THROW(spline_through(std::vector<Point>{{1, 1}, {1, 1}, {2, 2}}), std::invalid_argument);
    EXPECT_THROW(spline_through(std::vector<Point>{{1, 1}, {nan, 1}}), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
