#include "dartwright/pattern/outline.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/geometry/closest.hpp"
#include "geometry/length_oracle.hpp"
#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using sample::dart;
using sample::front;
using sample::straight;

TEST(outline, an_item_starts_where_the_one_before_it_ended) {
    const Outline outline = front();
    EXPECT_EQ(start_of_item(outline, 0), (Point{20, 0}));
    EXPECT_EQ(start_of_item(outline, 4), (Point{180, 0}));
    EXPECT_THROW(start_of_item(outline, 99), std::out_of_range);
}

TEST(outline, edges_have_curves_and_darts_have_legs) {
    const Outline outline = front();
    EXPECT_EQ(curves_of_item(outline, 1), (std::vector<Curve>{Line{{80, 0}, {90, 0}}}));
    EXPECT_THROW(curves_of_item(outline, 0), std::invalid_argument);
    EXPECT_EQ(legs_of_item(outline, 0).to_point, Curve(Line{{20, 0}, {50, 40}}));
    EXPECT_EQ(legs_of_item(outline, 0).from_point, Curve(Line{{50, 40}, {80, 0}}));
    EXPECT_THROW(legs_of_item(outline, 1), std::invalid_argument);
}

TEST(outline, a_measured_edge_passes_through_its_points_with_one_cubic_a_span) {
    const EdgeItem edge{"armhole", SplineShape{{{10, 5}, {20, -5}}}, 0};
    const std::vector<Curve> curves = curves_of(edge, {0, 0}, {30, 0});
    ASSERT_EQ(curves.size(), 3u);
    EXPECT_EQ(end_of(curves[0]), (Point{10, 5}));
    EXPECT_EQ(start_of(curves[2]), (Point{20, -5}));
    EXPECT_EQ(end_of(curves[2]), (Point{30, 0}));
}

TEST(outline, curved_legs_are_kept_on_their_own_sides_when_reversed) {
    Outline outline = front();
    outline.items[0].as_dart()->legs = {{{{{21, 20}, {40, 30}}}, {{{60, 30}, {79, 20}}}}};
    const Legs legs = legs_of_item(outline, 0);
    const Legs back = legs_of_item(reversed(outline), outline.items.size() - 1);
    EXPECT_EQ(back.to_point, reversed(legs.from_point));
    EXPECT_EQ(back.from_point, reversed(legs.to_point));
}

TEST(outline, sewn_length_is_geometric_length_less_fullness) {
    Outline outline = front();
    outline.items[3].as_edge()->fullness = 7;
    EXPECT_DOUBLE_EQ(length_of_item(outline, 3), 30);
    EXPECT_DOUBLE_EQ(sewn_length_of_item(outline, 3), 23);
}

TEST(outline, a_gap_is_measured_and_closed_at_its_end) {
    Outline outline = front();
    outline.items.back().to = {17, 4};
    EXPECT_DOUBLE_EQ(gap_of(outline), 5);
    EXPECT_EQ(with_gap_closed(outline), front());
    EXPECT_EQ(gap_of(Outline{}), 0);
    EXPECT_EQ(with_gap_closed(Outline{}), Outline{});
}

TEST(outline, a_gap_is_closed_at_a_measured_point) {
    Outline outline = front();
    const Point start = outline.start;
    const Point before = start_of_item(outline, outline.items.size() - 1);
    outline.items.back() = {EdgeItem{"centre", SplineShape{{middle(before, start), start}}, 0}, {17, 4}};
    Outline closed = with_gap_closed(outline);
    EXPECT_EQ(closed.items.back().to, start);
    EXPECT_EQ(std::get<SplineShape>(closed.items.back().as_edge()->shape).through,
              std::vector<Point>{middle(before, start)});
    EXPECT_GT(length_of_item(closed, closed.items.size() - 1), 0);
    outline.items.back().as_edge()->shape = SplineShape{{start}};
    closed = with_gap_closed(outline);
    EXPECT_TRUE(std::holds_alternative<StraightShape>(closed.items.back().as_edge()->shape));
    EXPECT_DOUBLE_EQ(length_of_item(closed, closed.items.size() - 1), distance(before, start));
}

TEST(outline, area_counts_darts_as_drawn) {
    const Outline outline = front();
    const double rectangle = 180 * 400;
    // Triangles of base 60 and height 40, 40 and (bust dart) 40.
    EXPECT_DOUBLE_EQ(signed_area(outline, DartsDrawn::to_points), rectangle - 3 * 1200);
    Outline with_pivot = outline;
    with_pivot.items[0].as_dart()->pivot = Point{50, 60};
    EXPECT_DOUBLE_EQ(signed_area(with_pivot, DartsDrawn::to_points), rectangle - 3 * 1200);
    EXPECT_DOUBLE_EQ(signed_area(with_pivot, DartsDrawn::to_pivots), rectangle - 3 * 1200 - 600);
    EXPECT_DOUBLE_EQ(signed_area(reversed(outline), DartsDrawn::to_points), 3 * 1200 - rectangle);
    EXPECT_EQ(signed_area(Outline{}, DartsDrawn::to_points), 0);
}

// Archimedes: a segment of a parabola has two thirds of the area of the rectangle about it.
TEST(outline, area_under_a_parabola_is_two_thirds_of_its_box) {
    Outline outline;
    outline.start = {0, 0};
    outline.items = {straight("chord", {90, 0}), sample::curved("arch", {0, 0}, {{{60, 40}, {30, 40}}})};
    EXPECT_NEAR(signed_area(outline, DartsDrawn::to_points), 2.0 / 3 * 90 * 30, 1e-9);
}

TEST(flat_outline, remembers_the_item_of_every_side) {
    const FlatOutline flat = flat_outline(front(), DartsDrawn::to_points, 0.01);
    EXPECT_EQ(flat.points.size(), 13u) << "ten items, three of them darts with two sides";
    EXPECT_EQ(flat.item_of_side, (std::vector<std::size_t>{0, 0, 1, 2, 2, 3, 4, 5, 5, 6, 7, 8, 9}));
}

TEST(flat_outline, of_an_open_outline_closes_with_a_side_of_the_last_item) {
    Outline outline = sample::square({"hem", "side", "top", "centre"});
    outline.items.back().to = {0, 1};
    const FlatOutline flat = flat_outline(outline, DartsDrawn::to_points, 0.01);
    EXPECT_EQ(flat.points.size(), 5u);
    EXPECT_EQ(flat.item_of_side, (std::vector<std::size_t>{0, 1, 2, 3, 3}));
}

// --- Properties ----------------------------------------------------------------------------------------

Piece any_piece() {
    return testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
}

double shoelace(const std::vector<Point>& polygon) {
    double twice = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Point b = polygon[(i + 1) % polygon.size()];
        twice += (a.x - polygon[0].x) * (b.y - polygon[0].y) - (b.x - polygon[0].x) * (a.y - polygon[0].y);
    }
    return twice / 2;
}

// The integral of x dy by Gauss's rule of 30 points, exact for the fifth degree that cubics give.
double area_by_quadrature(const Outline& outline) {
    using Rule = boost::math::quadrature::gauss<long double, 30>;
    long double area = 0;
    const auto add = [&](const Curve& curve) {
        area += Rule::integrate(
            [&](long double t) {
                return static_cast<long double>(point_at(curve, double(t)).x - outline.start.x) *
                       derivative_at(curve, double(t)).y;
            },
            0.0L, 1.0L);
    };
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) {
            add(legs_of_item(outline, i).to_point);
            add(legs_of_item(outline, i).from_point);
            continue;
        }
        for (const Curve& curve : curves_of_item(outline, i)) add(curve);
    }
    return double(area);
}

RC_GTEST_PROP(outline_property, area_of_straight_edges_is_the_shoelace_formula, ()) {
    const Piece piece = testing::any_piece(false, *testing::evenly(1, 4)).pattern.pieces[0];
    for (const DartsDrawn darts : {DartsDrawn::to_points, DartsDrawn::to_pivots}) {
        const double expected = shoelace(flat_outline(piece.outline, darts, 1).points);
        RC_ASSERT(std::abs(signed_area(piece.outline, darts) - expected) <= 1e-12 * expected);
    }
}

RC_GTEST_PROP(outline_property, area_of_curved_edges_is_the_integral_of_x_dy, ()) {
    const Piece piece = any_piece();
    const double expected = area_by_quadrature(piece.outline);
    RC_ASSERT(std::abs(signed_area(piece.outline, DartsDrawn::to_points) - expected) <= 1e-11 * expected);
}

RC_GTEST_PROP(outline_property, length_of_an_item_is_the_quadratures, ()) {
    const Piece piece = any_piece();
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (!piece.outline.items[i].as_edge()) continue;
        double expected = 0;
        for (const Curve& curve : curves_of_item(piece.outline, i)) {
            const auto* cubic = std::get_if<Cubic>(&curve);
            expected += cubic ? double(length_by_oracle(*cubic)) : distance(start_of(curve), end_of(curve));
        }
        RC_ASSERT(std::abs(length_of_item(piece.outline, i) - expected) <= 1e-9 * expected + 1e-9);
    }
}

RC_GTEST_PROP(outline_property, reversed_twice_is_the_same, ()) {
    const Outline outline = any_piece().outline;
    RC_ASSERT(reversed(reversed(outline)) == outline);
    RC_ASSERT(reversed(outline).start == outline.start);
}

RC_GTEST_PROP(outline_property, reversed_has_the_same_lengths_and_the_area_with_the_other_sign, ()) {
    const Outline outline = any_piece().outline;
    const Outline back = reversed(outline);
    const std::size_t n = outline.items.size();
    for (std::size_t i = 0; i < n; ++i) {
        RC_ASSERT(start_of_item(back, n - 1 - i) == outline.items[i].to);
        if (!outline.items[i].as_edge()) continue;
        const double length = length_of_item(outline, i);
        RC_ASSERT(std::abs(length_of_item(back, n - 1 - i) - length) <= 2e-9 * length + 1e-9);
    }
    const double area = signed_area(outline, DartsDrawn::to_points);
    RC_ASSERT(std::abs(signed_area(back, DartsDrawn::to_points) + area) <= 1e-11 * area);
}

RC_GTEST_PROP(outline_property, area_grows_by_the_square_of_the_scale, ()) {
    const Piece piece = any_piece();
    const testing::Similarity s{testing::real_between(-3, 3),
                                testing::log_between(0.1, 10),
                                *rc::gen::arbitrary<bool>(),
                                {testing::real_between(-500, 500), testing::real_between(-500, 500)}};
    const double area = signed_area(piece.outline, DartsDrawn::to_pivots);
    const double copy = signed_area(testing::image(s, piece).outline, DartsDrawn::to_pivots);
    RC_ASSERT(area > 0);
    RC_ASSERT(std::abs(copy - s.scale * s.scale * area) <= 1e-10 * copy);
}

RC_GTEST_PROP(outline_property, a_flattening_keeps_to_its_chord_error_and_its_items, ()) {
    const Outline outline = any_piece().outline;
    const double chord_error = testing::log_between(0.001, 1);
    const FlatOutline flat = flat_outline(outline, DartsDrawn::to_points, chord_error);
    RC_ASSERT(flat.points.size() == flat.item_of_side.size());
    for (std::size_t i = 0; i < flat.points.size(); ++i) {
        const std::size_t item = flat.item_of_side[i];
        if (!outline.items[item].as_edge()) continue;
        const Point mid = middle(flat.points[i], flat.points[(i + 1) % flat.points.size()]);
        double nearest = INFINITY;
        for (const Curve& curve : curves_of_item(outline, item))
            nearest = std::min(nearest, closest_point(curve, mid).distance);
        RC_ASSERT(nearest <= chord_error * (1 + 1e-9) + 1e-9);
    }
}

}  // namespace
}  // namespace dartwright
