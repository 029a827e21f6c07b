// A dart shared out among a row of small ones.
//
// Published: 'Dress Making' trade theory (NIMI, Government of India, 2024), p. 199, a cluster at the waist:
// slashes 1 in away from each other, spread equally, every leg as long as the middle dart's.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "darts/plain_front.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/made_operations.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

ClusterRequest of_three(double apart_mm = 25.4) {
    ClusterRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.apart_mm = apart_mm;
    return request;
}

TEST(Cluster, SpreadsThreeDartsEquallyAnInchApartWithLegsOfTheMiddleOne) {
    const ClusterResult made = cluster(plain(), of_three());
    const Piece& piece = made.pattern.pieces[0];
    const auto runs = runs_of(piece.outline);
    const std::vector<double> at = dart_distances(piece.outline, run_named(runs, "waist", "front"));
    ASSERT_EQ(at.size(), 3u);
    EXPECT_NEAR(at[0], 80 - 25.4, 1e-9);
    EXPECT_NEAR(at[1], 80, 1e-9);
    EXPECT_NEAR(at[2], 80 + 25.4, 1e-9);
    const double whole = figures(plain(), "waist dart").angle_rad;
    const double middle_leg = figures(made.pattern, "waist dart 2").leg_a;
    // The middle one is a third of the old dart with its old back-off of 20 mm.
    const double pivot_leg = std::hypot(20, 200);
    EXPECT_NEAR(middle_leg, std::sqrt(pivot_leg * pivot_leg + 400 - 2 * pivot_leg * 20 * std::cos(whole / 6)),
                1e-9);
    for (const char* name : {"waist dart 1", "waist dart 2", "waist dart 3"}) {
        const DartFigures f = figures(made.pattern, name);
        EXPECT_NEAR(f.angle_rad, whole / 3, 1e-12) << name;
        EXPECT_NEAR(f.leg_a, middle_leg, 1e-9) << name;
        EXPECT_NEAR(f.leg_b, middle_leg, 1e-9) << name;
        EXPECT_NEAR(f.off_bisector, 0, 1e-9) << name;
    }
}

TEST(Cluster, OfParallelDartsHasLegsOfTheMiddleOneAndParallelFoldsOnceSewn) {
    ClusterRequest request = of_three();
    request.lies = ClusterLies::parallel;
    const ClusterResult made = cluster(plain(), request);
    const double leg = figures(made.pattern, "waist dart 2").leg_a;
    const Vector axis = bisector_of(figures(made.pattern, "waist dart 2"));
    const double third = figures(plain(), "waist dart").angle_rad / 3;
    for (const auto& [name, turned] : {std::pair{"waist dart 1", -third}, std::pair{"waist dart 3", third}}) {
        const DartFigures f = figures(made.pattern, name);
        EXPECT_NEAR(f.leg_a, leg, 0.001);
        EXPECT_NEAR(f.leg_b, f.leg_a, 1e-9);
        EXPECT_EQ(f.point, f.pivot);
        EXPECT_NEAR(angle_from(axis, bisector_of(f)), turned, 1e-3);
    }
    for (const RunChange& run : made.account.runs) EXPECT_NEAR(run.before_mm, run.after_mm, 1e-6) << run.edge;
    EXPECT_TRUE(contains(made.account.notes.back(), "cannot be merged again"));
}

TEST(Cluster, OfTwoLiesToBothSidesOfAPlace) {
    ClusterRequest request = of_three(20);
    request.count = 2;
    request.to = "shoulder@50%";
    const ClusterResult made = cluster(plain(), request);
    const Piece& piece = made.pattern.pieces[0];
    const auto runs = runs_of(piece.outline);
    const std::vector<double> at = dart_distances(piece.outline, run_named(runs, "shoulder", "front"));
    ASSERT_EQ(at.size(), 2u);
    EXPECT_NEAR(at[0], 35, 1e-9);
    EXPECT_NEAR(at[1], 55, 1e-9);
    EXPECT_FALSE(find_dart(piece, "waist dart"));
}

TEST(Cluster, IsReplayedFromItsRequest) {
    for (const ClusterLies lies : {ClusterLies::radiating, ClusterLies::parallel}) {
        ClusterRequest request = of_three(12.3);
        request.lies = lies;
        request.count = 4;
        request.press = "side";
        const Pattern made = cluster(plain(), request).pattern;
        ASSERT_EQ(made.made.size(), 1u);
        const Pattern again = read_operation(made.made[0])(plain());
        EXPECT_EQ(again.pieces, made.pieces);
        EXPECT_EQ(again.made, made.made);
    }
}

TEST(Cluster, SaysWhyNot) {
    EXPECT_THROW(cluster(plain(), of_three(0)), BadWords);
    EXPECT_THROW(cluster(plain(), of_three(90)), Impossible);
    ClusterRequest one = of_three();
    one.count = 1;
    EXPECT_THROW(cluster(plain(), one), BadWords);
    ClusterRequest corner = of_three();
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[0].as_edge()->edge = "hem";
    EXPECT_THROW(cluster(pattern, corner), Impossible);
    Pattern taken = plain();
    taken.pieces[0].double_darts.push_back(
        {"waist dart 3", {30, 80}, {30, 160}, {{{28, 120}, {32, 120}}}, ""});
    EXPECT_THROW(cluster(taken, of_three()), BadWords);
}

}  // namespace

namespace testing {
namespace {

RC_GTEST_PROP(ClusterKeeps, LengthsAreaAndNotchesAndMakesLegsEqual, ()) {
    const GeneratedPiece piece = any_piece(true, *rc::gen::inRange(1, 3));
    const Piece& before = piece.pattern.pieces[0];
    ClusterRequest request;
    request.piece = "piece";
    // The first dart stands inside an edge.
    request.dart = "dart 0";
    request.count = *rc::gen::inRange(2, 5);
    request.apart_mm = 2.1 + piece.size_mm * real_between(0, 0.04);
    if (*rc::gen::arbitrary<bool>()) request.lies = ClusterLies::parallel;
    ClusterResult made;
    try {
        made = cluster(piece.pattern, request);
    } catch (const Impossible&) {
        RC_DISCARD("no room in the edge, a hidden place, or legs that reach beyond the pivot");
    }
    const Piece& after = made.pattern.pieces[0];
    expect_same_runs(before, after);
    RC_ASSERT(before.notches == after.notches);
    const double close = request.lies == ClusterLies::parallel ? 0.0011 : 1e-7;
    double sum = 0;
    const DartFigures first = figures_of(after.outline, dart_named(after, made.account.darts[0].name));
    for (const ClusterDart& each : made.account.darts) {
        const DartFigures f = figures_of(after.outline, dart_named(after, each.name));
        RC_ASSERT(std::abs(f.leg_a - first.leg_a) <= 2 * close);
        RC_ASSERT(std::abs(f.leg_b - first.leg_b) <= 2 * close);
        RC_ASSERT(std::abs(f.off_bisector) <= 1e-7);
        sum += f.angle_rad;
    }
    if (request.lies == ClusterLies::parallel) return;
    RC_ASSERT(std::abs(sum - made.account.angle_rad) <= 1e-9);
    RC_ASSERT(std::abs(cloth_area(after) - cloth_area(before)) <= 1e-11 * cloth_area(before));
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
