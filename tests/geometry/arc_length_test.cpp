#include "dartwright/geometry/arc_length.hpp"

#include "geometry/generators.hpp"
#include "geometry/length_oracle.hpp"

namespace dartwright {
namespace {

void expect_length(const Cubic& c, double wanted) {
    EXPECT_NEAR(length(c), wanted, arc_length_relative_error * wanted) << c;
}

// From (0, 0) over the middle control (width / 2, 2 height) to (width, 0), raised to a cubic.
Cubic parabola(double width, double height) {
    const Point a{0, 0};
    const Point m{width / 2, 2 * height};
    const Point b{width, 0};
    return {{a, between(a, m, 2.0 / 3), between(b, m, 2.0 / 3), b}};
}
// The classical formula for a segment of height h over a base w.
double parabola_length(double width, double height) {
    const double root = std::sqrt(width * width + 16 * height * height);
    return 0.5 * root + width * width / (8 * height) * std::asinh(4 * height / width);
}
// Of (t^2, t^3) from 0 to t.
double semicubical_length(double t) {
    return (std::pow(4 + 9 * t * t, 1.5) - 8) / 27;
}

TEST(ArcLength, line) {
    EXPECT_DOUBLE_EQ(length(Line{{1, 1}, {4, 5}}), 5);
    EXPECT_DOUBLE_EQ(length_between(Line{{1, 1}, {4, 5}}, 0.25, 0.75), 2.5);
}

TEST(ArcLength, one_point_has_none) {
    EXPECT_EQ(length(Cubic{{Point{3, 4}, {3, 4}, {3, 4}, {3, 4}}}), 0);
    EXPECT_EQ(parameter_at(Cubic{{Point{3, 4}, {3, 4}, {3, 4}, {3, 4}}}, 1), 0);
}

TEST(ArcLength, straight_cubic) {
    expect_length({{Point{0, 0}, {10, 0}, {20, 0}, {30, 0}}}, 30);
    expect_length({{Point{0, 0}, {0, 0}, {30, 40}, {30, 40}}}, 50);
    expect_length({{Point{0, 0}, {0, 0}, {0, 0}, {30, 40}}}, 50);
}

// x' = 3 (a s^2 + 2 b s t + c t^2): the walk turns back where it vanishes.
TEST(ArcLength, straight_cubic_that_doubles_back) {
    const Cubic c{{Point{0, 0}, {100, 0}, {-50, 0}, {60, 0}}};
    const double a = 100;
    const double b = -150;
    const double d = 110;
    const double square = a - 2 * b + d;
    const double root = std::sqrt((b - a) * (b - a) - square * a);
    const double first = point_at(c, (a - b - root) / square).x;
    const double second = point_at(c, (a - b + root) / square).x;
    expect_length(c, first + (first - second) + (60 - second));
    const Motion turned = turn_about({7, -3}, turn_by(0.7));
    expect_length(std::get<Cubic>(moved(c, turned)), first + (first - second) + (60 - second));
}

TEST(ArcLength, parabola) {
    for (const double height : {1e-3, 0.1, 1.0, 30.0, 1e3, 1e6}) {
        expect_length(parabola(100, height), parabola_length(100, height));
    }
}

TEST(ArcLength, exact_cusp) {
    for (const double low : {-1.0, -0.3, -1e-3, 0.0}) {
        const double wanted = 50 * (semicubical_length(-low) + semicubical_length(1.5));
        expect_length(generated::semicubical(low, 1.5, 50), wanted);
    }
}

// The usual cubic for a quarter circle stays outside it by at most 2.73e-4 of the radius.
TEST(ArcLength, quarter_of_nearly_a_circle) {
    const double k = 4.0 / 3 * (std::sqrt(2.0) - 1);
    const double quarter = length(Cubic{{Point{1, 0}, {1, k}, {k, 1}, {0, 1}}});
    EXPECT_GT(quarter, pi / 2);
    EXPECT_LT(quarter, pi / 2 * (1 + 2.73e-4));
}

TEST(ArcLength, loop_without_a_chord) {
    const Cubic c{{Point{0, 0}, {100, 100}, {-100, 100}, {0, 0}}};
    expect_length(c, static_cast<double>(length_by_oracle(c)));
}

TEST(ArcLength, coordinates_at_the_ends_of_the_range) {
    for (const int power : {-1000, -300, 0, 300, 1000}) {
        Cubic c = generated::semicubical(-1, 1, 1);
        for (Point& p : c.p) p = {std::scalbn(p.x, power), std::scalbn(p.y, power)};
        expect_length(c, std::scalbn(2 * semicubical_length(1), power));
    }
}

// The place where a fixed rule of 16 or 32 points is wrong by up to 7e-4.
TEST(ArcLength, sweep_towards_a_cusp) {
    for (int i = 0; i <= 120; ++i) {
        Cubic c = generated::semicubical(-1, 0.8, 100);
        c.p[1].x += 100 * std::pow(10.0, -0.1 * i);
        expect_length(c, static_cast<double>(length_by_oracle(c)));
    }
}

RC_GTEST_PROP(ArcLength, agrees_with_the_oracle, ()) {
    const Cubic c = *generated::cubic(*generated::size());
    const auto wanted = static_cast<double>(length_by_oracle(c));
    RC_ASSERT(std::abs(length(c) - wanted) <= arc_length_relative_error * wanted);
}

RC_GTEST_PROP(ArcLength, agrees_with_the_oracle_near_cusps, ()) {
    const Cubic c = *generated::near_cusp(*generated::size());
    const auto wanted = static_cast<double>(length_by_oracle(c));
    RC_ASSERT(std::abs(length(c) - wanted) <= arc_length_relative_error * wanted);
}

RC_GTEST_PROP(ArcLength, agrees_with_the_oracle_between_parameters, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    const auto [from, to] = std::minmax({*generated::real(0, 1), *generated::real(0, 1)});
    const auto wanted = static_cast<double>(length_by_oracle(c, from, to));
    RC_ASSERT(std::abs(length_between(c, from, to) - wanted) <= arc_length_relative_error * wanted + 1e-12);
}

RC_GTEST_PROP(ArcLength, lies_between_chord_and_control_polygon, ()) {
    const Cubic c = *generated::cubic(*generated::size());
    const double polygon = distance(c.p[0], c.p[1]) + distance(c.p[1], c.p[2]) + distance(c.p[2], c.p[3]);
    RC_ASSERT(length(c) >= distance(c.p[0], c.p[3]) * (1 - 1e-9));
    RC_ASSERT(length(c) <= polygon * (1 + 1e-9));
}

RC_GTEST_PROP(ArcLength, of_two_parts_add_up, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    const CurveHalves halves = split_at(c, *generated::real(0, 1));
    const double whole = length(c);
    RC_ASSERT(std::abs(length(halves.before) + length(halves.after) - whole) <= 2e-9 * whole + 1e-12);
}

RC_GTEST_PROP(ArcLength, is_kept_by_motions_and_by_walking_back, ()) {
    const Cubic c = *generated::cubic(300);
    const double whole = length(c);
    RC_ASSERT(std::abs(length(moved(c, *generated::motion(1000))) - whole) <= 2e-9 * whole + 1e-12);
    RC_ASSERT(std::abs(length(reversed(c)) - whole) <= 2e-9 * whole);
}

RC_GTEST_PROP(ArcLength, scales_with_the_curve, ()) {
    Cubic c = *generated::cubic(300);
    const double whole = length(c);
    const double scale = *generated::log_uniform(1e-9, 1e9);
    for (Point& p : c.p) p = {scale * p.x, scale * p.y};
    RC_ASSERT(std::abs(length(c) - scale * whole) <= 2e-9 * scale * whole);
}

TEST(ParameterAt, clamps_to_the_curve) {
    const Cubic c{{Point{0, 0}, {10, 20}, {20, 20}, {30, 0}}};
    EXPECT_EQ(parameter_at(c, -1), 0);
    EXPECT_EQ(parameter_at(c, 0), 0);
    EXPECT_EQ(parameter_at(c, 1000), 1);
    EXPECT_EQ(parameter_at(Line{{0, 0}, {10, 0}}, 1000), 1);
    EXPECT_EQ(parameter_at(Line{{0, 0}, {10, 0}}, 2.5), 0.25);
    EXPECT_EQ(parameter_at(Line{{0, 0}, {0, 0}}, 2.5), 0);
}

TEST(ParameterAt, finds_the_cusp_itself) {
    const double to_cusp = 50 * semicubical_length(1);
    const Cubic c = generated::semicubical(-1, 1, 50);
    const double t = parameter_at(c, to_cusp);
    EXPECT_LT(distance(point_at(c, t), {0, 0}), 1e-9);
}

RC_GTEST_PROP(ParameterAt, is_the_inverse_of_length, ()) {
    const Cubic c = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
    const auto whole = static_cast<double>(length_by_oracle(c));
    const double wanted = whole * *generated::real(0, 1);
    const double t = parameter_at(c, wanted);
    // The last part is for the rounding of the parameter and of the sums.
    RC_ASSERT(std::abs(static_cast<double>(length_by_oracle(c, 0, t)) - wanted) <=
              std::max(1e-9, 1e-12 * whole) + 2e-14 * whole);
}

}  // namespace
}  // namespace dartwright
