// Darts closed otherwise than by sewing: ease, gathers, flare.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <algorithm>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/recording/made_operations.hpp"
#include "dartwright/darts/split.hpp"
#include "support/evenly.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

CloseGathersRequest gathers(double span_mm = 50, TakenIn as = TakenIn::gathers) {
    return {"front", "waist dart", as, span_mm};
}

CloseFlareRequest flare(const std::string& to) {
    return {"front", "waist dart", to, "", 60};
}

double change_of(const std::vector<RunChange>& runs, const std::string& edge) {
    for (const RunChange& run : runs) {
        if (run.edge == edge) return run.after_mm - run.before_mm;
    }
    throw std::runtime_error("no run " + edge);
}

TEST(CloseGathers, BridgesAStraightWaistByTheWidthOfTheMouth) {
    const CloseGathersResult closed = close_as_gathers(plain(), gathers());
    // Everything lies on one line, so that the bridge is longer than the waist by the mouth alone.
    EXPECT_NEAR(closed.account.fullness_mm, 40, 1e-9);
    EXPECT_NEAR(closed.account.sewn_mm, 100, 1e-9);
    EXPECT_NEAR(closed.account.from_mm, 30, 1e-9);
    EXPECT_NEAR(closed.account.to_mm, 130, 1e-9);
    EXPECT_FALSE(find_dart(closed.pattern.pieces[0], "waist dart"));
    for (const RunChange& run : closed.account.runs)
        EXPECT_NEAR(run.before_mm, run.after_mm, 1e-9) << run.edge;
}

TEST(CloseGathers, MarksTheStretchWithTwoNotches) {
    const Piece piece = close_as_gathers(plain(), gathers()).pattern.pieces[0];
    ASSERT_EQ(piece.notches.size(), 3u);
    EXPECT_EQ(piece.notches[1].edge, "waist");
    EXPECT_NEAR(piece.notches[1].at, 30, 1e-9);
    EXPECT_NEAR(piece.notches[2].at, 130, 1e-9);
}

TEST(CloseGathers, LeavesOutANotchThatWouldStandInACorner) {
    EXPECT_EQ(close_as_gathers(plain(), gathers(80)).pattern.pieces[0].notches.size(), 1u);
}

TEST(CloseGathers, NotchesTheSideThatItIsSewnTo) {
    Pattern pattern = plain();
    Piece band = pattern.pieces[0];
    band.name = "band";
    band.outline = {{0, 0},
                    {{EdgeItem{"lower", StraightShape{}, 0}, {160, 0}},
                     {EdgeItem{"right", StraightShape{}, 0}, {160, 30}},
                     {EdgeItem{"upper", StraightShape{}, 0}, {0, 30}},
                     {EdgeItem{"left", StraightShape{}, 0}, {0, 0}}}};
    band.notches.clear();
    band.marks.clear();
    band.cut->fold.clear();
    band.grain->along.clear();
    pattern.pieces.push_back(band);
    // The waist from its centre front, the band from its right end: they are walked from opposite ends.
    pattern.seams.push_back(
        {"waist",
         {SeamSide{{"front", "waist", "centre front", false}}, SeamSide{{"band", "upper", "left", false}}},
         {},
         {{"centre front", CornerIs::free}, {"side", CornerIs::free}}});
    const CloseGathersResult closed = close_as_gathers(pattern, gathers());
    const Piece& notched = closed.pattern.pieces[1];
    ASSERT_EQ(notched.notches.size(), 2u);
    EXPECT_EQ(notched.notches[0].from, "left");
    EXPECT_NEAR(notched.notches[0].at, 30, 1e-9);
    EXPECT_NEAR(notched.notches[1].at, 130, 1e-9);
    for (const Finding& finding : check(closed.pattern).findings)
        EXPECT_NE(finding.seam, "waist") << finding.message;
}

// With a second dart 30 mm away in the waist, the stretch ends 2 mm before its mouth.
TEST(CloseGathers, StaysClearOfTheNextDartAndSaysSo) {
    SplitRequest split_request;
    split_request.piece = "front";
    split_request.dart = "waist dart";
    split_request.places = {{"waist@50/centre front", 0.5, "second", ""}};
    const Pattern two = split(plain(), split_request).pattern;
    const CloseGathersResult closed = close_as_gathers(two, gathers(60));
    EXPECT_NEAR(closed.account.from_mm, 52, 1e-6);
    EXPECT_TRUE(contains(closed.account.notes.back(), "clear of the next dart"));
    EXPECT_EQ(close_as_gathers(two, gathers(20)).account.notes.size(), 0u);
    // Gathered once, the second dart's stretch may not run into the first's.
    EXPECT_THROW(close_as_gathers(closed.pattern, {"front", "second", TakenIn::gathers, 20}), Impossible);
    EXPECT_NO_THROW(close_as_gathers(close_as_gathers(two, gathers(10)).pattern,
                                     {"front", "second", TakenIn::gathers, 15}));
}

// After a front is opened, the other edge is in two seams, and both of them ask for the notches.
TEST(CloseGathers, NotchesEveryEdgeThatIsSewnToTheOtherSide) {
    Pattern pattern = plain();
    for (const char* name : {"band", "facing"}) {
        Piece copy = pattern.pieces[0];
        copy.name = name;
        copy.outline.items.erase(copy.outline.items.begin() + 1, copy.outline.items.begin() + 3);
        copy.outline.items[0].to = {160, 0};
        copy.outline.items[1].to = {160, 300};
        copy.notches.clear();
        pattern.pieces.push_back(copy);
    }
    pattern.seams.push_back(
        {"one",
         {SeamSide{{"front", "waist", "side", false}}, SeamSide{{"band", "waist", "side", false}}},
         {},
         {}});
    pattern.seams.push_back({"two",
                             {SeamSide{{"facing", "waist", "centre front", false}},
                              SeamSide{{"band", "waist", "centre front", false}}},
                             {},
                             {}});
    const Pattern closed = close_as_gathers(pattern, gathers(35)).pattern;
    for (const std::size_t k : {1u, 2u}) {
        ASSERT_EQ(closed.pieces[k].notches.size(), 2u) << k;
        EXPECT_NEAR(closed.pieces[k].notches[0].at, 45, 1e-6);
        EXPECT_NEAR(closed.pieces[k].notches[1].at, 115, 1e-6);
    }
}

TEST(CloseGathers, SaysWhenThereIsTooMuchToEase) {
    EXPECT_TRUE(close_as_gathers(plain(), gathers()).account.notes.empty());
    const auto notes = close_as_gathers(plain(), gathers(50, TakenIn::ease)).account.notes;
    ASSERT_EQ(notes.size(), 1u);
    EXPECT_TRUE(contains(notes[0], "40 % of the stretch"));
}

TEST(CloseGathers, RefusesWhatItCannotDo) {
    EXPECT_THROW(close_as_gathers(plain(), gathers(0)), BadWords);
    EXPECT_THROW(close_as_gathers(plain(), {"front", "side dart", TakenIn::ease, 50}), UnknownName);
    Pattern corner = plain();
    corner.pieces[0].outline.items[2].as_edge()->edge = "side waist";
    for (Notch& notch : corner.pieces[0].notches)
        if (notch.from == "waist") notch.from = "side waist";
    EXPECT_THROW(close_as_gathers(corner, gathers()), Impossible);
}

TEST(CloseTuck, StitchesHalfOfTheLegsAndKeepsEverythingElse) {
    const CloseTuckResult closed = close_as_tuck(plain(), {"front", "waist dart", {}});
    // The point is at half of the mouth's 20 mm and 180 mm up; half way the legs are 20 mm apart.
    EXPECT_NEAR(closed.account.leg_mm, std::hypot(20, 180), 1e-9);
    EXPECT_NEAR(closed.account.stitched_mm, std::hypot(20, 180) / 2, 1e-9);
    EXPECT_NEAR(closed.account.released_mm, 20, 1e-9);
    Pattern expected = plain();
    expected.pieces[0].outline.items[1].as_dart()->stitched = closed.account.stitched_mm;
    EXPECT_EQ(closed.pattern.pieces, expected.pieces);
    const auto untuck = [](Pattern pattern) {
        pattern.pieces[0].outline.items[1].as_dart()->stitched.reset();
        return pattern;
    };
    EXPECT_EQ(untuck(closed.pattern).pieces, plain().pieces);
}

TEST(CloseTuck, StaysATuckWhenItIsMovedAndTheLegsAreLongEnough) {
    const Pattern tucked = close_as_tuck(plain(), {"front", "waist dart", 90}).pattern;
    const auto stitched_after = [&](const std::string& to) {
        PivotRequest request;
        request.piece = "front";
        request.dart = "waist dart";
        request.to = to;
        const Piece piece = pivot(tucked, request).pattern.pieces[0];
        return piece.outline.items[dart_named(piece, "waist dart")].as_dart()->stitched;
    };
    EXPECT_EQ(stitched_after("shoulder@50%"), 90);
    // From the pivot to the side it is 100 mm, and to the point 80.
    EXPECT_EQ(stitched_after("side@200/waist"), std::nullopt);
}

TEST(CloseTuck, RefusesTheWholeDartAndNothing) {
    EXPECT_THROW(close_as_tuck(plain(), {"front", "waist dart", 182}), Impossible);
    EXPECT_THROW(close_as_tuck(plain(), {"front", "waist dart", 0}), BadWords);
}

TEST(CloseFlare, OpensTheHemByTheDartsAngleAtItsDistance) {
    // From a neck dart of the plain front to its straight waist.
    const CloseFlareResult closed = close_as_flare(plain(), flare("shoulder@50%"));
    // The pivot is (100, 200), the middle of the shoulder (105, 400).
    const double opening = 2 * std::hypot(5, 200) * std::sin(std::atan(20.0 / 200));
    EXPECT_NEAR(closed.account.opening_mm, opening, 1e-9);
    EXPECT_FALSE(find_dart(closed.pattern.pieces[0], "waist dart"));
    EXPECT_EQ(closed.account.hem, "shoulder");
    EXPECT_NEAR(change_of(closed.account.runs, "shoulder"), closed.account.added_mm, 1e-9);
    // A smooth line over the opening is longer than what it takes the place of by the opening, nearly.
    EXPECT_NEAR(closed.account.added_mm, opening, 1);
    for (const char* edge : {"waist", "side", "armhole", "neck", "centre front"})
        EXPECT_NEAR(change_of(closed.account.runs, edge), 0, 1e-9) << edge;
}

TEST(Close, IsReplayedFromItsRequest) {
    for (const Pattern& closed : {close_as_gathers(plain(), gathers(35)).pattern,
                                  close_as_gathers(plain(), gathers(45, TakenIn::ease)).pattern,
                                  close_as_tuck(plain(), {"front", "waist dart", 72.5}).pattern,
                                  close_as_flare(plain(), flare("shoulder@50%")).pattern}) {
        ASSERT_EQ(closed.made.size(), 1u);
        const Pattern again = read_operation(closed.made[0])(plain());
        EXPECT_EQ(again.pieces[0], closed.pieces[0]);
        EXPECT_EQ(again.made, closed.made);
    }
}

TEST(CloseFlare, RefusesACornerAndWhatPivotRefuses) {
    EXPECT_THROW(close_as_flare(plain(), flare("shoulder@0/armhole")), Impossible);
    EXPECT_THROW(close_as_flare(plain(), flare("centre front@50%")), Impossible);
    EXPECT_THROW(close_as_flare(plain(), flare("hem@50%")), UnknownName);
    CloseFlareRequest none = flare("shoulder@50%");
    none.span_mm = 0;
    EXPECT_THROW(close_as_flare(plain(), none), BadWords);
}

}  // namespace

namespace testing {
namespace {

RC_GTEST_PROP(CloseGathersKeeps, EverySewnLengthAndAddsTheStatedFullness, ()) {
    const GeneratedPiece piece = any_piece(true, *testing::evenly(1, 3));
    const Piece& before = piece.pattern.pieces[0];
    // A mouth between two peaks is bridged by less than the edge if the span is many times its width.
    const double mouth = figures_of(before.outline, dart_named(before, piece.darts[0])).intake;
    const CloseGathersRequest request{"piece", piece.darts[0], TakenIn::gathers,
                                      std::max(1.0, mouth * real_between(0.2, 1))};
    CloseGathersResult closed;
    try {
        closed = close_as_gathers(piece.pattern, request);
    } catch (const Impossible&) {
        RC_DISCARD("a mouth in so deep a corner that the bridge is shorter than the edge");
    }
    const Piece& after = closed.pattern.pieces[0];
    expect_same_runs(before, after);
    double fullness = 0;
    for (const OutlineItem& item : after.outline.items) {
        if (item.as_edge()) fullness += item.as_edge()->fullness;
    }
    RC_ASSERT(std::abs(fullness - closed.account.fullness_mm) <= rounding_mm);
    RC_ASSERT(cloth_area(after) > cloth_area(before));
    RC_ASSERT(!find_dart(after, piece.darts[0]));
}

RC_GTEST_PROP(CloseFlareKeeps, EveryRunButTheHem, ()) {
    const GeneratedPiece piece = any_piece(true, 1);
    const std::string place = any_place(piece.pattern.pieces[0]);
    RC_PRE(!place.empty());
    CloseFlareResult closed;
    try {
        closed = close_as_flare(piece.pattern, {"piece", piece.darts[0], place, "", real_between(10, 80)});
    } catch (const Impossible&) {
        RC_DISCARD("a slash into a corner, or a place hidden by a curve");
    }
    const std::vector<Run> runs = runs_of(closed.pattern.pieces[0].outline);
    for (const RunChange& run : closed.account.runs) {
        RC_ASSERT(std::abs(find_run(runs, run.edge)->length - run.after_mm) <= length_rounding(run.after_mm));
        const double change = run.after_mm - run.before_mm;
        const double meant = run.edge == closed.account.hem ? closed.account.added_mm : 0;
        RC_ASSERT(std::abs(change - meant) <= length_rounding(run.after_mm));
    }
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
