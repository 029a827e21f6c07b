#include "dartwright/pattern/dart.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "geometry/length_oracle.hpp"
#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using sample::front;

TEST(figures_of, a_dart_whose_point_is_its_pivot) {
    const DartFigures f = figures_of(front(), 0);  // two triangles of 30, 40, 50
    EXPECT_EQ(f.a, (Point{20, 0}));
    EXPECT_EQ(f.b, (Point{80, 0}));
    EXPECT_EQ(f.pivot, f.point);
    EXPECT_DOUBLE_EQ(f.leg_a, 50);
    EXPECT_DOUBLE_EQ(f.leg_b, 50);
    EXPECT_DOUBLE_EQ(f.pivot_leg_a, 50);
    EXPECT_DOUBLE_EQ(f.intake, 60);
    EXPECT_NEAR(f.angle_rad, 2 * std::atan(0.75), 1e-15);
    EXPECT_DOUBLE_EQ(f.sewn_angle_rad, f.angle_rad);
    EXPECT_EQ(f.back_off, 0);
    EXPECT_EQ(f.off_bisector, 0);
}

TEST(figures_of, two_angles_at_a_point_that_is_not_the_pivot) {
    Outline outline = front();
    outline.items[0].as_dart()->pivot = Point{50, 72};  // legs of 78: 30, 72, 78
    const DartFigures f = figures_of(outline, 0);
    EXPECT_DOUBLE_EQ(f.pivot_leg_a, 78);
    EXPECT_DOUBLE_EQ(f.pivot_leg_b, 78);
    EXPECT_DOUBLE_EQ(f.leg_a, 50);
    EXPECT_NEAR(f.angle_rad, 2 * std::atan(30.0 / 72), 1e-15);
    EXPECT_NEAR(f.sewn_angle_rad, 2 * std::atan(30.0 / 40), 1e-15);
    EXPECT_NEAR(f.back_off, 32, 1e-12);
    EXPECT_NEAR(f.off_bisector, 0, 1e-12);
    EXPECT_NEAR(bisector_of(f).x, 0, 1e-15);
    EXPECT_NEAR(bisector_of(f).y, -1, 1e-15);
}

TEST(figures_of, a_point_beyond_its_pivot_has_a_negative_back_off) {
    Outline outline = front();
    outline.items[0].as_dart()->pivot = Point{50, 30};
    EXPECT_NEAR(figures_of(outline, 0).back_off, -10, 1e-12);
}

TEST(figures_of, a_point_off_the_bisector_says_to_which_side) {
    Outline outline = front();
    outline.items[0].as_dart()->pivot = Point{50, 72};
    outline.items[0].as_dart()->point = {53, 40};
    const DartFigures f = figures_of(outline, 0);
    EXPECT_NEAR(f.off_bisector, 3, 1e-12) << "left of the way from the pivot to the mouth";
    EXPECT_NEAR(f.back_off, 32, 1e-12);
}

TEST(figures_of, legs_that_differ) {
    Outline outline = front();
    outline.items[0].to = {86, -8};  // as far along the second leg again: 60 long
    outline.items[1].to = {90, -8};
    const DartFigures f = figures_of(outline, 0);
    EXPECT_DOUBLE_EQ(f.leg_a, 50);
    EXPECT_DOUBLE_EQ(f.leg_b, 60);
    EXPECT_NEAR(f.angle_rad, 2 * std::atan(0.75), 1e-15);
}

TEST(figures_of, curved_legs_are_measured_along_the_curve_and_their_angles_straight) {
    Outline outline = front();
    const std::array<Point, 2> up{{{10, 20}, {40, 30}}};
    outline.items[0].as_dart()->legs = {{up, {{{60, 30}, {90, 20}}}}};
    const DartFigures f = figures_of(outline, 0);
    const double expected = double(length_by_oracle(Cubic{{Point{20, 0}, up[0], up[1], Point{50, 40}}}));
    EXPECT_GT(f.leg_a, 50);
    EXPECT_NEAR(f.leg_a, expected, 1e-7);
    EXPECT_NEAR(f.leg_b, expected, 1e-7);
    EXPECT_NEAR(f.sewn_angle_rad, 2 * std::atan(0.75), 1e-15);
}

TEST(figures_of, an_edge_has_none) {
    EXPECT_THROW(figures_of(front(), 1), std::invalid_argument);
}

TEST(figures_of, a_dart_crossed_the_wrong_way_round_has_a_negative_angle) {
    Outline outline = front();
    outline.items[0].as_dart()->point = {50, -40};  // outside the piece
    EXPECT_LT(figures_of(outline, 0).angle_rad, 0);
}

TEST(figures_of, a_shut_dart_and_one_without_legs_are_finite) {
    Outline outline = front();
    outline.items[0].to = outline.start;
    EXPECT_EQ(figures_of(outline, 0).angle_rad, 0);
    EXPECT_EQ(figures_of(outline, 0).intake, 0);
    outline.items[0].as_dart()->point = outline.start;
    const DartFigures f = figures_of(outline, 0);
    EXPECT_EQ(f.leg_a, 0);
    EXPECT_EQ(f.back_off, 0);
    EXPECT_EQ(f.off_bisector, 0);
}

TEST(closing, takes_the_second_leg_to_the_first) {
    Outline outline = front();
    outline.items[0].as_dart()->pivot = Point{50, 72};
    const DartFigures f = figures_of(outline, 0);
    EXPECT_LE(distance(apply(closing_about_pivot(f), f.b), f.a), 1e-12);
    EXPECT_LE(distance(apply(closing_about_point(f), f.b), f.a), 1e-12);
    EXPECT_LE(distance(apply(closing_about_pivot(f), f.pivot), f.pivot), 1e-12);
    EXPECT_LE(distance(apply(closing_about_point(f), f.point), f.point), 1e-12);
    EXPECT_NEAR(angle(closing_about_pivot(f)), -f.angle_rad, 1e-15);
    EXPECT_NEAR(angle(closing_about_point(f)), -f.sewn_angle_rad, 1e-15);
}

// --- Properties: the generator's darts have equal legs and points on their bisectors ---------------------

RC_GTEST_PROP(dart_property, the_mouth_is_twice_the_leg_times_the_sine_of_half_the_angle, ()) {
    const auto piece = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (!piece.outline.items[i].as_dart()) continue;
        const DartFigures f = figures_of(piece.outline, i);
        RC_ASSERT(std::abs(f.intake - 2 * f.pivot_leg_a * std::sin(f.angle_rad / 2)) <= 1e-9);
        RC_ASSERT(std::abs(f.intake - 2 * f.leg_a * std::sin(f.sewn_angle_rad / 2)) <= 1e-9);
        RC_ASSERT(f.sewn_angle_rad >= f.angle_rad - 1e-12);
        RC_ASSERT(std::abs(f.leg_a - f.leg_b) <= 1e-9);
        RC_ASSERT(std::abs(f.off_bisector) <= 1e-9);
        RC_ASSERT(std::abs(f.back_off - distance(f.point, f.pivot)) <= 1e-9);
    }
}

RC_GTEST_PROP(dart_property, laws_under_turning_reflecting_shifting_and_scaling, ()) {
    Piece piece = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    const double k = testing::log_between(0.1, 10);
    const testing::Similarity s{testing::real_between(-3, 3),
                                k,
                                *rc::gen::arbitrary<bool>(),
                                {testing::real_between(-500, 500), testing::real_between(-500, 500)}};
    for (OutlineItem& item : piece.outline.items) {
        // Points aside, so that legs differ and there is a side to be off on.
        if (DartItem* dart = item.as_dart()) dart->point = dart->point + Vector{1, 2};
    }
    const Piece copy = testing::image(s, piece);
    const double side = s.is_reflected ? -1 : 1;
    const double rounding = 1e-9 * std::max(1.0, k);
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        const DartFigures f = figures_of(piece.outline, i);
        const DartFigures g = figures_of(copy.outline, *find_dart(copy, dart->name));
        RC_ASSERT(std::abs(g.angle_rad - f.angle_rad) <= 1e-10);
        RC_ASSERT(std::abs(g.intake - k * f.intake) <= rounding);
        RC_ASSERT(std::abs(g.leg_a - k * (s.is_reflected ? f.leg_b : f.leg_a)) <= rounding);
        RC_ASSERT(std::abs(g.pivot_leg_b - k * (s.is_reflected ? f.pivot_leg_a : f.pivot_leg_b)) <= rounding);
        RC_ASSERT(std::abs(g.back_off - k * f.back_off) <= rounding);
        RC_ASSERT(std::abs(g.off_bisector - side * k * f.off_bisector) <= rounding);
    }
}

TEST(ClosingOfADart, IsNoneWithoutALeg) {
    DartFigures dart;
    dart.a = dart.point = {1, 2};
    dart.b = {3, 2};
    dart.pivot = {3, 2};
    EXPECT_EQ(closing_about_point(dart), Motion{});
    EXPECT_EQ(closing_about_pivot(dart), Motion{});
}

}  // namespace
}  // namespace dartwright
