// The distance of two outlines against one found the plain way: every place asks every curve.

#include "dartwright/comparing/outline_distance.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <limits>

#include "dartwright/geometry/closest.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {
namespace {

std::vector<Curve> curves_of_all(const Outline& outline, const Motion& motion) {
    std::vector<Curve> out;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_edge()) {
            for (const Curve& curve : curves_of_item(outline, i)) out.push_back(moved(curve, motion));
        } else {
            out.push_back(moved(legs_of_item(outline, i).to_point, motion));
            out.push_back(moved(legs_of_item(outline, i).from_point, motion));
        }
    }
    return out;
}

double from_all(Point p, const std::vector<Curve>& curves) {
    double least = std::numeric_limits<double>::infinity();
    for (const Curve& curve : curves) least = std::min(least, closest_point(curve, p).distance);
    return least;
}

double greatest_speed(const Curve& curve) {
    const auto* cubic = std::get_if<Cubic>(&curve);
    if (!cubic) return distance(start_of(curve), end_of(curve));
    double longest = 0;
    for (std::size_t i = 1; i < 4; ++i) longest = std::max(longest, distance(cubic->p[i - 1], cubic->p[i]));
    return 3 * longest;
}

// Looks at the middle of every stretch, then of the halves of those that could hide a place farther by more
// than `finest_mm` than the farthest seen, until there are none.
double farthest(const std::vector<Curve>& from, const std::vector<Curve>& to, double finest_mm) {
    struct Stretch {
        const Curve* curve;
        double from;
        double to;
    };
    std::vector<Stretch> stretches;
    double most = 0;
    for (const Curve& curve : from) {
        stretches.push_back({&curve, 0, 1});
        most = std::max(most, from_all(start_of(curve), to));
    }
    while (!stretches.empty()) {
        std::vector<Stretch> halves;
        for (const Stretch& each : stretches) {
            const double middle = 0.5 * (each.from + each.to);
            const double away = from_all(point_at(*each.curve, middle), to);
            most = std::max(most, away);
            if (away + 0.5 * (each.to - each.from) * greatest_speed(*each.curve) <= most + finest_mm)
                continue;
            halves.push_back({each.curve, each.from, middle});
            halves.push_back({each.curve, middle, each.to});
        }
        stretches = std::move(halves);
    }
    return most;
}

void expect_plain_distance(const Outline& first, const Motion& motion, const Outline& second,
                           double size_mm) {
    // As fine as the test has time for.
    const double finest_mm = 2e-4 * size_mm;
    const std::vector<Curve> a = curves_of_all(first, motion);
    const std::vector<Curve> b = curves_of_all(second, Motion{});
    const double plain = std::max(farthest(a, b, finest_mm), farthest(b, a, finest_mm));
    const OutlineDistance found = outline_distance(first, motion, second);
    RC_LOG() << found.at_least_mm << " to " << found.at_most_mm << ", plainly " << plain << "\n";
    RC_ASSERT(found.at_least_mm <= found.at_most_mm);
    RC_ASSERT(found.at_most_mm <= found.at_least_mm + outline_distance_error_mm);
    RC_ASSERT(plain <= found.at_most_mm + 1e-8);
    RC_ASSERT(found.at_least_mm <= plain + finest_mm + 1e-8);
}

RC_GTEST_PROP(OutlineDistance, of_a_piece_and_itself_moved_is_the_plain_one, ()) {
    const GeneratedPiece piece = any_piece(true, *evenly(1, 3));
    const double far = piece.size_mm * log_between(1e-4, 1);
    const Motion motion =
        then(turn_about(piece.pivot, turn_by(real_between(-0.5, 0.5) * far / piece.size_mm)),
             shift_by({real_between(-1, 1) * far, real_between(-1, 1) * far}));
    const Outline& outline = piece.pattern.pieces[0].outline;
    expect_plain_distance(outline, motion, outline, piece.size_mm);
}

RC_GTEST_PROP(OutlineDistance, of_two_pieces_is_the_plain_one, ()) {
    const GeneratedPiece first = any_piece(true, *evenly(1, 3));
    const GeneratedPiece second = any_piece(true, *evenly(1, 3));
    const Motion motion = shift_by(second.pivot - first.pivot);
    expect_plain_distance(first.pattern.pieces[0].outline, motion, second.pattern.pieces[0].outline,
                          std::max(first.size_mm, second.size_mm));
}

// Exact geometry: the farthest places are the corners of the larger one.
TEST(OutlineDistance, of_squares_in_each_other_is_from_corner_to_corner) {
    const auto square = [](double half) {
        Outline out;
        out.start = {-half, -half};
        for (const Point to :
             {Point{half, -half}, Point{half, half}, Point{-half, half}, Point{-half, -half}})
            out.items.push_back({EdgeItem{"edge", StraightShape{}, 0}, to});
        return out;
    };
    const OutlineDistance apart = outline_distance(square(100), Motion{}, square(110));
    EXPECT_NEAR(apart.at_least_mm, 10 * std::sqrt(2.0), 1e-12);
    EXPECT_LE(apart.at_most_mm, 10 * std::sqrt(2.0) + outline_distance_error_mm);
}

}  // namespace
}  // namespace dartwright::testing
