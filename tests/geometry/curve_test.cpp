#include "dartwright/geometry/curve.hpp"

#include "geometry/generators.hpp"

namespace dartwright {
namespace {

TEST(Curve, tangents_where_control_points_coincide_with_an_end) {
    const Point a{0, 0};
    const Point b{3, 4};
    EXPECT_EQ(tangent_at_start(Cubic{{a, a, {0, 5}, b}}), (Vector{0, 1}));
    EXPECT_EQ(tangent_at_start(Cubic{{a, a, a, b}}), (Vector{0.6, 0.8}));
    EXPECT_EQ(tangent_at_end(Cubic{{a, b, b, b}}), (Vector{0.6, 0.8}));
    EXPECT_EQ(tangent_at_end(Cubic{{a, {3, 0}, b, b}}), (Vector{0, 1}));
    EXPECT_EQ(tangent_at_start(Cubic{{a, a, a, a}}), (Vector{0, 0}));
}

TEST(Curve, tangent_at_a_cusp_is_that_of_the_side_before) {
    const Vector tangent = tangent_at(generated::semicubical(-1, 1, 8), 0.5);
    EXPECT_NEAR(tangent.x, -1, 1e-12);
    EXPECT_NEAR(tangent.y, 0, 1e-12);
}

RC_GTEST_PROP(Curve, parts_share_their_joint_and_follow_the_whole, ()) {
    const Cubic c = *generated::cubic(300);
    const double t = *generated::real(0, 1);
    const CurveHalves halves = split_at(c, t);
    RC_ASSERT(end_of(halves.before) == start_of(halves.after));
    const double u = *generated::real(0, 1);
    RC_ASSERT(distance(point_at(halves.before, u), point_at(c, t * u)) <= 1e-12 * 300);
    RC_ASSERT(distance(point_at(halves.after, u), point_at(c, t + (1 - t) * u)) <= 1e-12 * 300);
}

RC_GTEST_PROP(Curve, part_between_follows_the_whole, ()) {
    const Cubic c = *generated::cubic(300);
    const auto [from, to] = std::minmax({*generated::real(0, 1), *generated::real(0, 1)});
    RC_PRE(from < to);
    const double u = *generated::real(0, 1);
    RC_ASSERT(distance(point_at(part_between(c, from, to), u), point_at(c, from + (to - from) * u)) <= 1e-9);
}

RC_GTEST_PROP(Curve, joined_undoes_split_at, ()) {
    const Cubic c = *generated::cubic(300);
    const double t = *generated::real(0.001, 0.999);
    const CurveHalves halves = split_at(c, t);
    // The joint's tangent gives the ratio of the parts; it must be there.
    RC_PRE(norm(derivative_at(c, t)) > 1);
    const auto whole = joined(halves.before, halves.after, 1e-9);
    RC_ASSERT(whole.has_value());
    // The outer control points are found by dividing by t and 1 - t.
    for (std::size_t i = 0; i < 4; ++i) RC_ASSERT(distance(std::get<Cubic>(*whole).p[i], c.p[i]) <= 1e-6);
    for (int i = 0; i <= 8; ++i) RC_ASSERT(distance(point_at(*whole, i / 8.0), point_at(c, i / 8.0)) <= 1e-6);
}

TEST(Curve, joins_collinear_lines_only) {
    EXPECT_TRUE(joined(Line{{0, 0}, {1, 1}}, Line{{1, 1}, {3, 3}}, 1e-9).has_value());
    EXPECT_FALSE(joined(Line{{0, 0}, {1, 1}}, Line{{1, 1}, {3, 3.1}}, 1e-9).has_value());
    EXPECT_FALSE(joined(Line{{0, 0}, {2, 2}}, Line{{2, 2}, {1, 1}}, 1e-9).has_value());
    EXPECT_FALSE(joined(Line{{0, 0}, {1, 1}}, Line{{2, 2}, {3, 3}}, 1e-9).has_value());
}

RC_GTEST_PROP(Curve, lies_in_its_bounds, ()) {
    const Cubic c = *generated::cubic(300);
    const Box box = bounds(c);
    const Point p = point_at(c, *generated::real(0, 1));
    RC_ASSERT(box.low.x - 1e-12 <= p.x && p.x <= box.high.x + 1e-12);
    RC_ASSERT(box.low.y - 1e-12 <= p.y && p.y <= box.high.y + 1e-12);
}

RC_GTEST_PROP(Curve, with_ends_keeps_the_tangents, ()) {
    const Cubic c = *generated::cubic(300);
    RC_PRE(!(c.p[0] == c.p[1]) && !(c.p[2] == c.p[3]));
    const NewEnds ends{*generated::point(300), *generated::point(300)};
    const Curve changed = with_ends(c, ends);
    RC_ASSERT(start_of(changed) == ends.start && end_of(changed) == ends.end);
    RC_ASSERT(norm(derivative_at(changed, 0) - derivative_at(c, 0)) <= 1e-11);
    RC_ASSERT(norm(derivative_at(changed, 1) - derivative_at(c, 1)) <= 1e-11);
}

// A place found by a length may lie a rounding error beside an end, where a part split off would be rounding
// too.
RC_GTEST_PROP(Curve, tangent_beside_an_end_is_the_ends, ()) {
    const Cubic c = *generated::cubic(300);
    RC_PRE(distance(c.p[0], c.p[1]) > 1 && distance(c.p[2], c.p[3]) > 1);
    for (const double beside : {1e-17, 1e-16, 1e-15, 1e-12}) {
        RC_ASSERT(norm(tangent_at(c, beside) - tangent_at_start(c)) <= 1e-8);
        RC_ASSERT(norm(tangent_at(c, 1 - beside) - tangent_at_end(c)) <= 1e-8);
    }
}

TEST(Curve, tangent_beside_an_end_with_two_controls_in_it_is_the_ends) {
    const Cubic c{{Point{0, 0}, {0, 0}, {30, 40}, {100, 40}}};
    for (const double beside : {1e-17, 1e-12, 1e-9, 1e-7}) {
        EXPECT_NEAR(norm(tangent_at(c, beside) - Vector{0.6, 0.8}), 0, 1e-6) << beside;
    }
}

}  // namespace
}  // namespace dartwright
