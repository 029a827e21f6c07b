// A dart shared out among a row of small ones.
//
// Published: 'Dress Making' trade theory (NIMI, Government of India, 2024), p. 199, a cluster at the waist:
// slashes 1 in away from each other, spread equally, every leg as long as the middle dart's.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "darts/plain_front.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/recording/made_operations.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
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
        // The middle one turns about its pivot by a third, about its point by more.
        const double middle = figures(made.pattern, "waist dart 2").sewn_angle_rad;
        const double half = (middle + f.sewn_angle_rad) / 2;
        EXPECT_NEAR(angle_from(axis, bisector_of(f)), turned < 0 ? -half : half, 2e-6);
        EXPECT_GT(half, third);
    }
    for (const RunChange& run : made.account.runs) EXPECT_NEAR(run.before_mm, run.after_mm, 1e-6) << run.edge;
    EXPECT_TRUE(contains(made.account.notes.back(), "cannot be merged again"));
}

// The strips of cloth between the mouths, laid together on the first: each is turned about the point of the
// dart before it until the legs meet. The sewn lines as they then lie, from the mouth to the point.
std::vector<Vector> sewn_lines(const Piece& piece, const std::vector<std::string>& darts) {
    std::vector<Vector> lines;
    double turned = 0;
    for (const std::string& name : darts) {
        const std::size_t item = *find_dart(piece, name);
        const Point a = start_of_item(piece.outline, item);
        const Point point = piece.outline.items[item].as_dart()->point;
        const Point b = piece.outline.items[item].to;
        const double along_a = std::atan2(a.y - point.y, a.x - point.x);
        const double along_b = std::atan2(b.y - point.y, b.x - point.x);
        lines.push_back({std::cos(along_a + turned), std::sin(along_a + turned)});
        turned += along_a - along_b;
    }
    return lines;
}

double most_apart_deg(const std::vector<Vector>& lines) {
    double most = 0;
    for (const Vector& each : lines) {
        const double across = lines[0].x * each.y - lines[0].y * each.x;
        most = std::max(most, degrees(std::abs(std::asin(std::clamp(across, -1.0, 1.0)))));
    }
    return most;
}

// The edge with the darts of a row sewn: every item of it is turned about the points of the darts before it,
// by the difference of two arctangents; where one strip then ends and the next begins, and how long it is.
struct Sewn {
    double most_gap_mm = 0;
    double length_mm = 0;
};
Sewn sewn_over(const Piece& piece, const std::vector<std::string>& darts, const std::string& edge) {
    const Outline& outline = piece.outline;
    std::vector<std::array<double, 4>> turns;  // about x, y by cosine, sine; the last dart's first
    const auto laid = [&](Point p) {
        for (const auto& [x, y, cosine, sine] : turns)
            p = {x + cosine * (p.x - x) - sine * (p.y - y), y + sine * (p.x - x) + cosine * (p.y - y)};
        return p;
    };
    Sewn sewn;
    std::optional<Point> end;
    const std::size_t first = *find_dart(piece, darts.front());
    // From the first dart of the row on; the run may go over the outline's start, and what lies before the
    // row is not turned.
    for (std::size_t k = 0; k < outline.items.size(); ++k) {
        const std::size_t item = (first + k) % outline.items.size();
        const bool is_of_row =
            outline.items[item].as_dart() &&
            std::find(darts.begin(), darts.end(), outline.items[item].as_dart()->name) != darts.end();
        const Point from = start_of_item(outline, item);
        if (is_of_row) {
            const Point point = outline.items[item].as_dart()->point;
            const Point to = outline.items[item].to;
            if (!end) end = from;
            const double by =
                std::atan2(from.y - point.y, from.x - point.x) - std::atan2(to.y - point.y, to.x - point.x);
            turns.insert(turns.begin(), {point.x, point.y, std::cos(by), std::sin(by)});
            sewn.most_gap_mm = std::max(sewn.most_gap_mm, distance(*end, laid(to)));
        } else if (outline.items[item].as_edge()) {
            end = laid(outline.items[item].to);
        }
        if (outline.items[item].as_edge() && outline.items[item].as_edge()->edge == edge)
            sewn.length_mm += length_of_item(outline, item);
    }
    return sewn;
}

std::vector<std::string> names_in(const ClusterResult& made) {
    std::vector<std::string> names;
    for (const ClusterDart& each : made.account.darts) names.push_back(each.name);
    return names;
}

TEST(Cluster, OfParallelDartsIsSewnInParallelLinesWhateverTheBackOff) {
    for (const double back_off_mm : {0.0, 5.0, 20.0, 40.0}) {
        Pattern block = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
        RepointRequest aim;
        aim.piece = "front";
        aim.dart = "waist dart";
        aim.back_off_mm = back_off_mm;
        block = repoint(block, aim).pattern;
        for (const int count : {2, 3, 4, 5}) {
            ClusterRequest request = of_three(15);
            request.count = count;
            request.lies = ClusterLies::parallel;
            const ClusterResult made = cluster(block, request);
            const Piece& front = piece_named(made.pattern, "front");
            EXPECT_LT(most_apart_deg(sewn_lines(front, names_in(made))), 1e-6) << back_off_mm << ' ' << count;
            for (const RunChange& run : made.account.runs)
                EXPECT_NEAR(run.before_mm, run.after_mm, 1e-6) << run.edge;
            const Sewn sewn = sewn_over(front, names_in(made), "waist");
            EXPECT_LT(sewn.most_gap_mm, 1e-6);
            const auto runs = runs_of(piece_named(block, "front").outline);
            EXPECT_NEAR(sewn.length_mm, run_named(runs, "waist", "front").length, 1e-6);
            // What a cutter measures at the edge stays to some tenths of a millimetre, and so does the angle
            // at the points; that about the old pivot does not, since equal mouths are nearer to the points.
            double intakes_mm = 0;
            double sewn_rad = 0;
            for (const ClusterDart& dart : made.account.darts) {
                intakes_mm += dart.intake_mm;
                sewn_rad += dart.sewn_angle_rad;
            }
            EXPECT_NEAR(intakes_mm, made.account.old_intake_mm, 0.5);
            EXPECT_NEAR(degrees(sewn_rad), degrees(made.account.sewn_angle_rad), 0.3);
            for (const ClusterDart& dart : made.account.darts)
                EXPECT_NEAR(dart.leg_mm, made.account.darts[0].leg_mm, 0.002);
        }
    }
}

// As lists of operations that say nothing of it were made: written out by the program before it was mended.
TEST(Cluster, OfParallelDartsInAnOldListKeepsItsShape) {
    const Pattern block = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
    const Made old{"cluster",
                   {{"piece", "front"},
                    {"dart", "waist dart"},
                    {"count", "3"},
                    {"apart", "25.4mm"},
                    {"lies", "parallel"}}};
    const Pattern made = read_operation(old)(block);
    EXPECT_EQ(made.made.back(), old);
    const DartFigures first = figures(made, "waist dart 1");
    const DartFigures third = figures(made, "waist dart 3");
    EXPECT_NEAR(first.point.x, 364.6929295236504, 1e-9);
    EXPECT_NEAR(first.point.y, 152.2564183939341, 1e-9);
    EXPECT_NEAR(first.b.x, 359.5164079442172, 1e-9);
    EXPECT_NEAR(third.point.x, 418.3668710658519, 1e-9);
    EXPECT_NEAR(third.b.y, -2.8170319260731275, 1e-9);
    const std::vector<Vector> lines =
        sewn_lines(piece_named(made, "front"), {"waist dart 1", "waist dart 2", "waist dart 3"});
    EXPECT_GT(most_apart_deg(lines), 1);
    ClusterRequest anew = of_three();
    anew.lies = ClusterLies::parallel;
    EXPECT_NE(cluster(block, anew).pattern.made.back(), old);
}

TEST(Cluster, RefusesAnotherWayOfBeingParallel) {
    const auto entry = [](const char* lies, const char* about) {
        return Made{"cluster",
                    {{"piece", "front"},
                     {"dart", "waist dart"},
                     {"count", "3"},
                     {"apart", "25.4mm"},
                     {"lies", lies},
                     {"parallel_about", about}}};
    };
    EXPECT_THROW(read_operation(entry("parallel", "mouths")), BadWords);
    EXPECT_THROW(read_operation(entry("radiating", "points")), BadWords);
    EXPECT_NO_THROW(read_operation(entry("parallel", "points")));
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
    const GeneratedPiece piece = any_piece(true, *testing::evenly(1, 3));
    const Piece& before = piece.pattern.pieces[0];
    ClusterRequest request;
    request.piece = "piece";
    // The first dart stands inside an edge.
    request.dart = "dart 0";
    request.count = *testing::evenly(2, 5);
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
    if (request.lies == ClusterLies::parallel) {
        RC_ASSERT(most_apart_deg(sewn_lines(after, names_in(made))) <= 1e-6);
        const Sewn sewn = sewn_over(after, names_in(made), "edge 0");
        RC_ASSERT(sewn.most_gap_mm <= 1e-6);
        const auto was = runs_of(before.outline);
        RC_ASSERT(std::abs(sewn.length_mm - find_run(was, "edge 0")->length) <= 1e-6);
        return;
    }
    RC_ASSERT(std::abs(sum - made.account.angle_rad) <= 1e-9);
    RC_ASSERT(std::abs(cloth_area(after) - cloth_area(before)) <= 1e-11 * cloth_area(before));
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
