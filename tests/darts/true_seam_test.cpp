// Seams trued at one end: by example, and over generated pairs of pieces.

#include "dartwright/darts/true_seam.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <complex>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/replay.hpp"
#include "support/generated_seams.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

// Two skirt panels, 200 mm wide, their side edges 400 and 406 mm long, the second drawn the other way round.
const char* const skirt = R"({
  "dartwright": 1, "name": "skirt", "unit": "mm",
  "pieces": [
    {"name": "front", "cut": {"quantity": 1, "fold": "centre front"},
     "outline": {"start": [0, 0], "items": [
       {"edge": "hem", "to": [200, 0]}, {"edge": "side", "to": [200, 400]},
       {"edge": "waist", "to": [0, 400]}, {"edge": "centre front", "to": [0, 0]}]},
     "notches": [{"edge": "side", "from": "hem", "at": 300, "kind": "single"}]},
    {"name": "back", "cut": {"quantity": 1, "fold": "centre back"},
     "outline": {"start": [0, 0], "items": [
       {"edge": "hem", "to": [200, 0]}, {"edge": "centre back", "to": [200, 406]},
       {"edge": "waist", "to": [150, 406]},
       {"dart": "waist dart", "point": [140, 300], "to": [130, 406]},
       {"edge": "waist", "to": [0, 406]}, {"edge": "side", "to": [0, 0]}]},
     "notches": [{"edge": "side", "from": "hem", "at": 300, "kind": "single"}]}
  ],
  "seams": [{"name": "side", "joins": [
    {"piece": "front", "edge": "side", "from": "hem"}, {"piece": "back", "edge": "side", "from": "hem"}]}]
})";

Pattern two_panels() {
    return read_pattern(skirt, "skirt.json");
}

TrueSeamRequest at_waist(const std::string& move = "both", double span_mm = true_span_mm) {
    return {"side", "waist", move, span_mm};
}

double run_length(const Pattern& pattern, const std::string& piece, const std::string& edge) {
    const std::vector<Run> runs = runs_of(piece_named(pattern, piece).outline);
    return run_named(runs, edge, piece).length;
}

template <class Error>
std::string refusal(const Pattern& pattern, const TrueSeamRequest& request) {
    try {
        true_seam(pattern, request);
    } catch (const Error& error) {
        return error.what();
    }
    return "not refused";
}

TEST(TrueSeam, MovesTheEndThatIsAskedFor) {
    struct Moved {
        const char* move;
        double front;
        double back;
    };
    for (const Moved& moved : {Moved{"both", 403, 403}, Moved{"front", 406, 406}, Moved{"back", 400, 400},
                               Moved{"1", 406, 406}, Moved{"2", 400, 400}}) {
        const TrueSeamResult done = true_seam(two_panels(), at_waist(moved.move));
        EXPECT_NEAR(run_length(done.pattern, "front", "side"), moved.front, 1e-9) << moved.move;
        EXPECT_NEAR(run_length(done.pattern, "back", "side"), moved.back, 1e-9) << moved.move;
        EXPECT_NEAR(done.account.difference_before_mm, 6, 1e-12);
        EXPECT_NEAR(done.account.difference_after_mm, 0, 1e-9);
        EXPECT_NEAR(done.account.sides[0].moved_mm, moved.front - 400, 1e-12);
        EXPECT_NEAR(done.account.sides[1].moved_mm, moved.back - 406, 1e-12);
        EXPECT_NEAR(done.account.sides[0].corner_after_deg + done.account.sides[1].corner_after_deg, 180,
                    1e-9);
    }
}

TEST(TrueSeam, LeavesWhatLiesBeyondTheSpan) {
    const Pattern done = true_seam(two_panels(), at_waist("front")).pattern;
    const std::vector<OutlineItem>& items = done.pieces[0].outline.items;
    ASSERT_EQ(items.size(), 5u);
    EXPECT_EQ(items[1].to, (Point{200, 406}));
    EXPECT_EQ(items[2].to, (Point{160, 400}));
    EXPECT_EQ(items[3], (OutlineItem{EdgeItem{"waist", StraightShape{}, 0}, {0, 400}}));
    EXPECT_EQ(items[4], two_panels().pieces[0].outline.items[3]);
}

// The joined waist rises from (160, 400) level, over (200, 403), to level again at 40 mm beyond it, 3 mm
// higher: by the evenly bent line through three such points the middle slope is 3/2 of (6 / 80), as of a
// cubic step.
TEST(TrueSeam, DrawsWhatCrossesAsOneEvenLine) {
    const TrueSeamResult done = true_seam(two_panels(), at_waist());
    const double slope = degrees(std::atan(3.0 / 40));
    EXPECT_NEAR(done.account.sides[0].corner_after_deg, 90 - 1.5 * slope, 0.05);
    EXPECT_NEAR(done.account.sides[1].corner_after_deg, 90 + 1.5 * slope, 0.05);
}

TEST(TrueSeam, TakesTheEaseIntoAccount) {
    Pattern pattern = two_panels();
    pattern.seams[0].ease = Ease{1, 4, false};
    const TrueSeamResult done = true_seam(pattern, at_waist("front"));
    EXPECT_NEAR(done.account.difference_before_mm, 10, 1e-12);
    EXPECT_NEAR(run_length(done.pattern, "front", "side"), 410, 1e-9);
}

TEST(TrueSeam, GoesOnFromACurveInItsOwnDirection) {
    Pattern pattern = two_panels();
    pattern.pieces[0].outline.items[1].as_edge()->shape = CubicShape{{{{220, 100}, {220, 300}}}};
    const double before = run_length(pattern, "front", "side");
    const double difference = run_length(pattern, "back", "side") - before;
    const TrueSeamResult done = true_seam(pattern, at_waist("front"));
    EXPECT_NEAR(run_length(done.pattern, "front", "side"), before + difference, 1e-8);
    const Outline& outline = done.pattern.pieces[0].outline;
    // Not a strip of what was added, but ten millimetres and that.
    EXPECT_GT(length_of_item(outline, 2), 10);
    const Vector along = unit(Point{200, 400} - Point{220, 300});
    EXPECT_NEAR(cross(along, outline.items[2].to - Point{200, 400}), 0, 1e-9);
}

TEST(TrueSeam, AtAFreeEndOnlyBringsTheEdgesToIt) {
    Pattern pattern = two_panels();
    pattern.seams[0].ends["waist"] = CornerIs::free;
    const TrueSeamResult done = true_seam(pattern, at_waist());
    EXPECT_NEAR(done.account.difference_after_mm, 0, 1e-9);
    for (const TruedSide& side : done.account.sides) EXPECT_NEAR(side.corner_after_deg, 90, 1e-9);
    EXPECT_TRUE(contains(done.account.notes.back(), "the end is free"));
}

TEST(TrueSeam, KeepsTheDistanceByWhichNotchesAreWalked) {
    Pattern pattern = two_panels();
    pattern.pieces[1].notches = {{"side", "waist", 106, NotchKind::single},
                                 {"waist", "side", 100, NotchKind::single}};
    const Pattern done = true_seam(pattern, at_waist("back")).pattern;
    // Walked from the hem, it is 300 mm from there as before.
    EXPECT_NEAR(done.pieces[1].notches[0].at, 100, 1e-9);
    // In no seam it stays where it is, measured from a corner that moved.
    const Point was =
        place_on_run(pattern.pieces[1].outline, runs_of(pattern.pieces[1].outline)[2], 80).point;
    const auto runs = runs_of(done.pieces[1].outline);
    const auto& waist = run_named(runs, "waist", "back");
    const Point is =
        place_on_run(done.pieces[1].outline, waist, waist.length - done.pieces[1].notches[1].at).point;
    EXPECT_NEAR(distance(was, is), 0, 1e-6);
    Pattern from_waist = two_panels();
    for (SeamSide& side : from_waist.seams[0].joins) side[0].from = "waist";
    for (Piece& piece : from_waist.pieces) piece.notches[0] = {"side", "waist", 100, NotchKind::single};
    const Pattern trued = true_seam(from_waist, at_waist("back")).pattern;
    for (const Piece& piece : trued.pieces) EXPECT_EQ(piece.notches[0].at, 100);
}

TEST(TrueSeam, SaysWhatItCostsOtherSeams) {
    Pattern pattern = two_panels();
    pattern.pieces[0].outline.items[1].to = {206, 400};
    pattern.seams.push_back(
        {"waist seam",
         {SeamSide{{"front", "waist", "side", false}}, SeamSide{{"back", "waist", "side", false}}},
         {},
         {}});
    const TrueSeamResult done = true_seam(pattern, at_waist());
    ASSERT_EQ(done.account.seams.size(), 1u);
    EXPECT_EQ(done.account.seams[0].seam, "waist seam");
    EXPECT_NEAR(done.account.seams[0].before_mm, seam_difference(pattern, pattern.seams[1]), 1e-12);
    EXPECT_NEAR(done.account.seams[0].after_mm, seam_difference(done.pattern, pattern.seams[1]), 1e-12);
}

TEST(TrueSeam, OfASleeveDrawsBothEndsOfTheCap) {
    Pattern pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/after-fitting.json");
    Outline& outline = pattern.pieces[2].outline;
    outline.items[3].to = outline.items[3].to + Vector{0.5, 4};
    const TrueSeamResult done = true_seam(pattern, {"underarm", "cap", "2", 40});
    EXPECT_NEAR(done.account.difference_after_mm, 0, 1e-6);
    EXPECT_NEAR(done.account.sides[0].corner_after_deg + done.account.sides[1].corner_after_deg, 180, 1e-9);
    EXPECT_EQ(done.account.pieces.size(), 1u);
    EXPECT_TRUE(contains(refusal<BadWords>(pattern, {"underarm", "cap", "sleeve", 40}), "say 1 or 2"));
}

TEST(TrueSeam, OfAPieceWithItsMirrorImageMeetsItSquarely) {
    Pattern pattern = two_panels();
    pattern.pieces[0].cut = Cut{2, "", false, {}};
    pattern.pieces[0].outline.items[2].to = {0, 390};
    pattern.seams[0].joins = {SeamSide{{"front", "centre front", "hem", false}},
                              SeamSide{{"front", "centre front", "hem", true}}};
    const TrueSeamResult done = true_seam(pattern, at_waist());
    EXPECT_NEAR(done.account.sides[0].corner_after_deg, 90, 1e-9);
    EXPECT_NEAR(run_length(done.pattern, "front", "centre front"), 390, 1e-12);
}

TEST(TrueSeam, MovesTheRunAtThatEndOfASideOfSeveral) {
    const Pattern pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/after-fitting.json");
    const TrueSeamResult done = true_seam(pattern, {"armhole", "underarm back", "1", 40});
    EXPECT_EQ(done.account.sides[0].piece, "back");
    EXPECT_NEAR(done.account.difference_after_mm, 0, 1e-6);
    EXPECT_TRUE(
        contains(done.account.notes.back(), "\"armhole\" of \"back\" ends there and was made to match"));
}

TEST(TrueSeam, ThatIsTrueIsLeftAsItIs) {
    const Pattern once = true_seam(two_panels(), at_waist()).pattern;
    const TrueSeamResult twice = true_seam(once, at_waist());
    EXPECT_EQ(twice.pattern.pieces, once.pieces);
    EXPECT_TRUE(contains(twice.account.notes.at(0), "nothing was changed"));
}

TEST(TrueSeam, IsReplayed) {
    Pattern pattern = true_seam(two_panels(), at_waist("front", 50)).pattern;
    pattern.pieces[0].name = "front";
    const Pattern again = replay(two_panels(), pattern.made).pattern;
    EXPECT_EQ(again.pieces, pattern.pieces);
}

TEST(TrueSeam, RefusesWhatCannotBeDrawn) {
    EXPECT_TRUE(
        contains(refusal<Impossible>(two_panels(), at_waist("both", 200)),
                 "the mouth of \"waist dart\" stands in \"waist\" of \"back\", 130.0 mm from the seam"));
    Pattern far = two_panels();
    far.pieces[1].outline.items[1].to.y = far.pieces[1].outline.items[4].to.y = 460;
    EXPECT_TRUE(contains(refusal<Impossible>(far, at_waist("front")), "take a span of 60 mm or more"));
    Pattern folded = two_panels();
    folded.seams[0].joins = {SeamSide{{"front", "waist", "side", false}},
                             SeamSide{{"back", "hem", "side", false}}};
    EXPECT_TRUE(contains(refusal<Impossible>(folded, {"side", "centre front", "both", 40}),
                         "is the fold \"centre front\" of \"front\""));
    Pattern cornered = two_panels();
    cornered.pieces[1].outline.items[4].as_edge()->edge = "side waist";
    cornered.seams[0].joins = {SeamSide{{"front", "side", "hem", false}},
                               SeamSide{{"back", "waist", "centre back", false}}};
    EXPECT_TRUE(contains(refusal<Impossible>(cornered, at_waist()), "\"waist dart\" stands in that corner"));
    Pattern darted = two_panels();
    std::vector<OutlineItem>& items = darted.pieces[0].outline.items;
    items[1].to = {200, 390};
    DartItem dart;
    dart.name = "side dart";
    dart.point = {150, 392};
    items.insert(items.begin() + 2, {dart, {200, 394}});
    items.insert(items.begin() + 3, {EdgeItem{"side", StraightShape{}, 0}, {200, 399}});
    darted.seams[0].ease = Ease{2, 20, false};
    EXPECT_TRUE(contains(refusal<Impossible>(darted, at_waist("front")),
                         "shortened by 9.0 mm, and is only 5.0 mm long up to its other end or a dart"));
    Pattern adjacent = two_panels();
    adjacent.seams[0].joins = {SeamSide{{"front", "hem", "centre front", false}},
                               SeamSide{{"front", "side", "waist", false}}};
    EXPECT_TRUE(
        contains(refusal<Impossible>(adjacent, {"side", "side", "both", 40}), "no edge crosses the seam"));
}

// A waist that falls to the centre, and a facing for it whose corner is 6 mm too high. Its own waist meets
// the outer's 40 mm from the side.
Pattern faced_skirt() {
    Pattern pattern = two_panels();
    pattern.seams[0].laid = LaidAs::on_each_other;
    pattern.pieces[0].outline.items[2].to = {0, 420};
    Outline facing;
    facing.start = {100, 0};
    facing.items = {{EdgeItem{"hem", StraightShape{}, 0}, {200, 0}},
                    {EdgeItem{"side", StraightShape{}, 0}, {200, 406}},
                    {EdgeItem{"waist", StraightShape{}, 0}, {160, 404}},
                    {EdgeItem{"waist", StraightShape{}, 0}, {100, 410}},
                    {EdgeItem{"centre back", StraightShape{}, 0}, {100, 0}}};
    pattern.pieces[1].outline = facing;
    return pattern;
}

// The facing's waist is on the line through (200, 400) and (0, 420) then.
TEST(TrueSeam, LaidOnEachOtherMakesTheOneThatMovesLieOnTheOther) {
    const Pattern pattern = faced_skirt();
    const TrueSeamResult done = true_seam(pattern, at_waist("back", std::hypot(40.0, 2.0)));
    EXPECT_EQ(done.pattern.pieces[0], pattern.pieces[0]);
    const double corner = 90 + degrees(std::atan(20.0 / 200));
    for (const TruedSide& side : done.account.sides) EXPECT_NEAR(side.corner_after_deg, corner, 1e-9);
    EXPECT_NEAR(run_length(done.pattern, "back", "side"), 400, 1e-9);
    EXPECT_EQ(done.account.sides[0].span_mm, 0);
    const Outline& outline = done.pattern.pieces[1].outline;
    const auto runs = runs_of(outline);
    const auto& waist = run_named(runs, "waist", "back");
    for (int mm = 0; mm <= 100; mm += 5) {
        const Point p = place_on_run(outline, waist, mm).point;
        EXPECT_NEAR(p.y, 420 - p.x / 10, 1e-9) << mm;
    }
}

TEST(TrueSeam, LaidOnEachOtherMeetsMidwayWhereBothMove) {
    const Pattern pattern = faced_skirt();
    const TrueSeamResult done = true_seam(pattern, at_waist());
    const double first = 90 + degrees(std::atan(20.0 / 200));
    const double second = 90 - degrees(std::atan(2.0 / 40));
    for (const TruedSide& side : done.account.sides) {
        EXPECT_NEAR(side.corner_after_deg, (first + second) / 2, 1e-9);
        EXPECT_NEAR(side.span_mm, 40, 1e-9);
    }
    EXPECT_NEAR(run_length(done.pattern, "front", "side"), 403, 1e-9);
    EXPECT_NEAR(run_length(done.pattern, "back", "side"), 403, 1e-9);
}

TEST(TrueSeam, LaidOnEachOtherAtAFreeEndKeepsBothCorners) {
    Pattern pattern = faced_skirt();
    pattern.seams[0].ends["waist"] = CornerIs::free;
    const TrueSeamResult done = true_seam(pattern, at_waist());
    EXPECT_NEAR(done.account.difference_after_mm, 0, 1e-9);
    for (const TruedSide& side : done.account.sides)
        EXPECT_NEAR(side.corner_after_deg, side.corner_before_deg, 1e-9);
}

TEST(TrueSeam, LaidOnEachOtherThatIsTrueIsLeftAsItIs) {
    const Pattern once = true_seam(faced_skirt(), at_waist("front")).pattern;
    const TrueSeamResult twice = true_seam(once, at_waist("back"));
    EXPECT_EQ(twice.pattern.pieces, once.pieces);
    EXPECT_TRUE(contains(twice.account.notes.at(0), "nothing was changed"));
    EXPECT_EQ(replay(faced_skirt(), once.made).pattern.pieces, once.pieces);
}

TEST(TrueSeam, SaysItWhenItClosesAGapAndRefusesACrossedOutline) {
    Pattern open = two_panels();
    open.pieces[0].outline.items[3].to = {0.05, 0};
    EXPECT_TRUE(contains(true_seam(open, at_waist()).account.notes.at(0),
                         "a gap of 0.0500 mm in the outline of \"front\" was closed"));
    open.pieces[0].outline.items[3].to = {3, 0};
    EXPECT_TRUE(contains(refusal<Impossible>(open, at_waist()), "does not close, by 3.0 mm"));
    Pattern crossed = two_panels();
    crossed.pieces[0].outline.items[0].to = {-50, 200};
    EXPECT_TRUE(contains(refusal<Impossible>(crossed, at_waist()), "mend the outline first"));
}

TEST(TrueSeam, RefusesWrongWords) {
    EXPECT_THROW(true_seam(two_panels(), {"sides", "waist", "both", 40}), UnknownName);
    EXPECT_TRUE(contains(refusal<UnknownName>(two_panels(), {"side", "armhole", "both", 40}),
                         "there is \"hem\", \"waist\""));
    EXPECT_TRUE(contains(refusal<BadWords>(two_panels(), at_waist("sleeve")), "\"front\", \"back\", 1 or 2"));
    EXPECT_THROW(true_seam(two_panels(), at_waist("both", 0)), BadWords);
    EXPECT_THROW(true_seam(two_panels(), at_waist("both", std::nan(""))), BadWords);
}

}  // namespace

namespace testing {
namespace {

struct Trued {
    GeneratedSeam before;
    TrueSeamRequest request;
    TrueSeamResult result;
};

LaidAs laid_either_way() {
    return *rc::gen::arbitrary<bool>() ? LaidAs::flat : LaidAs::on_each_other;
}

Trued any_trued(LaidAs laid = laid_either_way()) {
    Trued out;
    out.before = any_seam();
    out.before.pattern.seams[0].laid = laid;
    out.request = {"side", *rc::gen::element<std::string>("hem", "waist"),
                   *rc::gen::element<std::string>("both", "first", "second", "1", "2"), real_between(25, 80)};
    try {
        out.result = true_seam(out.before.pattern, out.request);
    } catch (const Impossible& refused) {
        RC_DISCARD(refused.reason);
    }
    return out;
}

RC_GTEST_PROP(TrueSeamMakes, BothSidesMatchAndWhatCrossesRunOn, ()) {
    const Trued t = any_trued();
    const Seam& seam = t.before.pattern.seams[0];
    RC_ASSERT(std::abs(seam_difference(t.result.pattern, seam)) <= 1e-6);
    const auto& sides = t.result.account.sides;
    const double off = seam.laid == LaidAs::flat ? sides[0].corner_after_deg + sides[1].corner_after_deg - 180
                                                 : sides[0].corner_after_deg - sides[1].corner_after_deg;
    RC_ASSERT(std::abs(off) <= 1e-7);
    for (const Finding& finding : check(t.result.pattern).findings) {
        const bool is_there = finding.check == "seam-length" ||
                              (finding.check == "seam-corner" &&
                               finding.message.find("where it meets " + t.request.end) != std::string::npos);
        RC_ASSERT(!is_there);
    }
}

// Directions at the corner as complex numbers, by chords far shorter than any curve bends over.
struct CornerChords {
    std::complex<double> at;
    std::complex<double> seam;
    std::complex<double> crossing;
    double turn() const { return std::arg(crossing / seam); }
};
CornerChords chords_at(const Piece& piece, const std::string& end) {
    constexpr double chord_mm = 1e-4;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& side = *find_run(runs, "side");
    const bool is_at_end = side.after == end;
    const auto along = [&](const Run& run, bool from_end, double mm) {
        const Point p = place_on_run(piece.outline, run, from_end ? run.length - mm : mm).point;
        return std::complex<double>{p.x, p.y};
    };
    const Run& crossing = *find_run(runs, end);
    const std::complex<double> at = along(side, is_at_end, 0);
    return {at, along(side, is_at_end, chord_mm) - at, along(crossing, !is_at_end, chord_mm) - at};
}

// By the arithmetic of complex numbers: laid corner on corner and seam on seam, turned over where they are
// drawn the other way round from each other, the crossing edges have one direction.
RC_GTEST_PROP(TrueSeamMakes, PiecesLaidOnEachOtherLieOnEachOther, ()) {
    const Trued t = any_trued(LaidAs::on_each_other);
    const Pattern& pattern = t.result.pattern;
    const double first = chords_at(pattern.pieces[0], t.request.end).turn();
    const double second = chords_at(pattern.pieces[1], t.request.end).turn();
    RC_ASSERT(std::abs(std::abs(first) - std::abs(second)) <= 1e-4);
    // A piece that does not move is not touched.
    const std::string& move = t.request.move;
    if (move == "first" || move == "1") RC_ASSERT(pattern.pieces[1] == t.before.pattern.pieces[1]);
    if (move == "second" || move == "2") RC_ASSERT(pattern.pieces[0] == t.before.pattern.pieces[0]);
}

RC_GTEST_PROP(TrueSeamMoves, EachSideByItsShare, ()) {
    const Trued t = any_trued();
    const double difference = seam_difference(t.before.pattern, t.before.pattern.seams[0]);
    const std::string& move = t.request.move;
    const double first = move == "both" ? 0.5 : move == "first" || move == "1" ? 1 : 0;
    const std::array<double, 2> expected{first * difference, (first - 1) * difference};
    for (std::size_t side = 0; side < 2; ++side) {
        const Piece& before = t.before.pattern.pieces[side];
        const Piece& after = t.result.pattern.pieces[side];
        const double was = find_run(runs_of(before.outline), "side")->length;
        const double is = find_run(runs_of(after.outline), "side")->length;
        RC_ASSERT(std::abs(is - was - expected[side]) <= length_rounding(is));
        RC_ASSERT(std::abs(t.result.account.sides[side].moved_mm - expected[side]) <= 1e-6);
    }
}

// Every item that lies wholly beyond the span is the same to the last bit.
RC_GTEST_PROP(TrueSeamLeaves, WhatLiesBeyondTheSpanToTheLastBit, ()) {
    const Trued t = any_trued();
    for (std::size_t side = 0; side < 2; ++side) {
        const Outline& before = t.before.pattern.pieces[side].outline;
        const Outline& after = t.result.pattern.pieces[side].outline;
        const auto has = [&](std::size_t item) {
            for (std::size_t i = 0; i < after.items.size(); ++i) {
                if (after.items[i] == before.items[item] &&
                    start_of_item(after, i) == start_of_item(before, item))
                    return true;
            }
            return false;
        };
        const std::string far = t.request.end == "hem" ? "waist" : "hem";
        for (std::size_t item = 0; item < before.items.size(); ++item) {
            const std::string& edge = before.items[item].as_edge()->edge;
            if (edge == far || edge == "centre") RC_ASSERT(has(item));
        }
        const Run crossing = *find_run(runs_of(before), t.request.end);
        const Run drawn = *find_run(runs_of(after), t.request.end);
        const bool is_at_end = crossing.after == "side";
        for (int k = 0; k < 7; ++k) {
            // Geometric, from the corner that does not move.
            const double at = (crossing.length - t.request.span_mm - 1e-3) * (k + off_joints) / 7;
            if (at <= 0) continue;
            const Point was = place_on_run(before, crossing, is_at_end ? at : crossing.length - at).point;
            const Point is = place_on_run(after, drawn, is_at_end ? at : drawn.length - at).point;
            RC_ASSERT(distance(was, is) <= 1e-6);
        }
    }
}

RC_GTEST_PROP(TrueSeamKeeps, HowFarNotchesAreWalked, ()) {
    const Trued t = any_trued();
    for (std::size_t side = 0; side < 2; ++side) {
        const std::string& from = t.before.pattern.seams[0].joins[side][0].from;
        const auto walked = [&](const Pattern& pattern, std::size_t notch) {
            const Piece& piece = pattern.pieces[side];
            const double length = find_run(runs_of(piece.outline), "side")->length;
            const Notch& each = piece.notches[notch];
            return each.from == from ? each.at : length - each.at;
        };
        for (const std::size_t notch : {0u, 1u}) {
            const double was = walked(t.before.pattern, notch);
            const double length = find_run(runs_of(t.result.pattern.pieces[side].outline), "side")->length;
            if (was > length) {
                // It lay on what was cut off, and is left where it is measured.
                const auto& notes = t.result.account.notes;
                RC_ASSERT(std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
                    return note.find("strip that was cut off") != note.npos;
                }));
                continue;
            }
            RC_ASSERT(std::abs(walked(t.result.pattern, notch) - was) <= length_rounding(1000));
        }
    }
}

RC_GTEST_PROP(TrueSeamTwice, IsOnce, ()) {
    const Trued t = any_trued();
    RC_ASSERT(true_seam(t.result.pattern, t.request).pattern.pieces == t.result.pattern.pieces);
}

RC_GTEST_PROP(TrueSeamOfCopies, TurnedOrReflectedIsTheCopies, ()) {
    const Trued t = any_trued();
    Pattern copies = t.before.pattern;
    std::vector<Piece> expected = t.result.pattern.pieces;
    for (std::size_t piece = 0; piece < 2; ++piece) {
        const Similarity s{
            real_between(-3, 3), 1, *rc::gen::arbitrary<bool>(), {real_between(-300, 300), 50}};
        copies.pieces[piece] = image(s, copies.pieces[piece]);
        expected[piece] = image(s, expected[piece]);
    }
    const std::vector<Piece> found = true_seam(copies, t.request).pattern.pieces;
    for (std::size_t piece = 0; piece < 2; ++piece) {
        expect_same_points(samples_like(expected[piece], expected[piece], 7),
                           samples_like(found[piece], expected[piece], 7), 1e-5);
    }
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
