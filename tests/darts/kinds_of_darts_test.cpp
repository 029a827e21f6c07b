// Kinds of darts that operations meet: steep ones, ones that aim at each other, curved ones, ones with two
// points, ones that cross the centre front, and ones that radiate from one pivot.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/split.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

using Names = std::vector<std::string>;

const Point bust{100, 200};

// A front of straight edges with nothing to find. Each leg of its darts is square to the edge at its mouth,
// and no point is backed off, so that any mouth closes smooth (exact geometry). The shoulder dart aims at
// the waist dart.
constexpr const char* true_front = R"({
  "dartwright": 1, "name": "true front", "unit": "mm",
  "pieces": [{
    "name": "front",
    "cut": {"quantity": 2},
    "grain": {"from": [20, 50], "to": [20, 300], "along": "centre front"},
    "outline": {"start": [0, 8], "items": [
      {"edge": "waist", "to": [80, 0]},
      {"dart": "waist dart", "point": [100, 200], "to": [120, 0], "press": "centre front"},
      {"edge": "waist", "to": [200, 8]},
      {"edge": "side", "to": [200, 300]},
      {"edge": "armhole", "to": [150, 397]},
      {"edge": "shoulder", "to": [120, 400]},
      {"dart": "shoulder dart", "point": [100, 200], "to": [80, 400], "press": "neck"},
      {"edge": "shoulder", "to": [60, 398]},
      {"edge": "neck", "to": [0, 340]},
      {"edge": "centre front", "to": [0, 8]}
    ]},
    "notches": [{"edge": "side", "from": "waist", "at": 70, "kind": "single"},
                {"edge": "centre front", "from": "waist", "at": 120, "kind": "double"},
                {"edge": "waist", "from": "side", "at": 30, "kind": "single"}]
  }],
  "seams": []
})";

Pattern two_darts() {
    return read_pattern(true_front, "true-front.json");
}
Piece& piece_of(Pattern& pattern) {
    return pattern.pieces[0];
}
DartItem& dart_of(Pattern& pattern, const std::string& name) {
    Piece& piece = piece_of(pattern);
    return *piece.outline.items[dart_named(piece, name)].as_dart();
}

// The same front without its shoulder dart: the shoulder is one straight edge.
Pattern one_dart() {
    Pattern pattern = two_darts();
    std::vector<OutlineItem>& items = piece_of(pattern).outline.items;
    items.erase(items.begin() + 5, items.begin() + 7);
    return pattern;
}

const double waist_angle = 2 * std::atan2(20, 200);

PivotRequest moving(const std::string& dart, const std::string& to) {
    PivotRequest request;
    request.piece = "front";
    request.dart = dart;
    request.to = to;
    return request;
}

Names checks_of(const Pattern& pattern) {
    Names names;
    for (const Finding& finding : check(pattern).findings) names.push_back(finding.check);
    return names;
}

bool is_said(const std::vector<std::string>& notes, const std::string& words) {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const std::string& note) { return note.find(words) != note.npos; });
}

double sum_of_angles(const Pattern& pattern) {
    double sum = 0;
    const Outline& outline = pattern.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) sum += figures_of(outline, i).angle_rad;
    }
    return sum;
}

// Sewn lengths, angles, cloth, notches.
void expect_kept(const Pattern& before, const Pattern& after) {
    const std::vector<Run> runs = runs_of(after.pieces[0].outline);
    ASSERT_EQ(runs.size(), runs_of(before.pieces[0].outline).size());
    for (const Run& run : runs_of(before.pieces[0].outline)) {
        const Run* same = find_run(runs, run.edge);
        ASSERT_NE(same, nullptr) << run.edge;
        EXPECT_NEAR(same->length, run.length, 1e-9) << run.edge;
    }
    EXPECT_NEAR(sum_of_angles(after), sum_of_angles(before), 1e-12);
    EXPECT_NEAR(cloth_area(after.pieces[0]), cloth_area(before.pieces[0]), 1e-6);
    EXPECT_EQ(after.pieces[0].notches, before.pieces[0].notches);
}

void expect_near(Point a, Point b, const std::string& what) {
    EXPECT_LE(distance(a, b), 1e-9) << what << " (" << a.x << ", " << a.y << ")";
}

TEST(KindsOfDarts, BeginWithFrontsThatAreTrue) {
    EXPECT_EQ(checks_of(two_darts()), Names{});
    EXPECT_EQ(checks_of(one_dart()), Names{});
}

// A dart that rises steeply from the foot of the side: the front with its waist dart closed about the bust
// point and opened 20 mm above the waist. By hand: what lies between the two is turned about that point.
Pattern french() {
    Pattern pattern = one_dart();
    std::vector<OutlineItem>& items = piece_of(pattern).outline.items;
    const Motion closing = turn_about(bust, turn_by(-waist_angle));
    const DartItem dart{"french dart", bust, std::nullopt, std::nullopt, std::nullopt, "waist", std::nullopt};
    const Point low = apply(closing, Point{200, 28});
    items[1] = {EdgeItem{"waist", StraightShape{}, 0}, apply(closing, Point{200, 8})};
    items[2] = {EdgeItem{"side", StraightShape{}, 0}, low};
    items.insert(items.begin() + 3, {dart, {200, 28}});
    return pattern;
}

TEST(FrenchDart, IsSteepAndTrue) {
    const Pattern pattern = french();
    EXPECT_EQ(checks_of(pattern), Names{});
    const DartFigures dart = figures(pattern, "french dart");
    EXPECT_NEAR(dart.angle_rad, waist_angle, 1e-12);
    EXPECT_NEAR(dart.leg_a, std::hypot(100, 172), 1e-9);
    // More than 45 degrees below level.
    EXPECT_GT(bust.y - dart.b.y, dart.b.x - bust.x);
}

TEST(FrenchDart, GoesBackToTheWaistAndOnToTheShoulder) {
    const Pattern back = pivot(french(), moving("french dart", "waist@40/centre front")).pattern;
    expect_kept(french(), back);
    EXPECT_EQ(checks_of(back), Names{});
    PivotRequest home = moving("french dart", "waist@" + std::to_string(std::hypot(80, 8)) + "/centre front");
    home.name = "waist dart";
    const DartFigures waist = figures(pivot(french(), home).pattern, "waist dart");
    EXPECT_LE(distance(waist.a, {80, 0}), 1e-6);  // the place is written to 1e-6 mm
    EXPECT_LE(distance(waist.b, {120, 0}), 1e-6);
    const Pattern up = pivot(french(), moving("french dart", "shoulder@50%")).pattern;
    expect_kept(french(), up);
    EXPECT_EQ(checks_of(up), Names{});
    EXPECT_NEAR(figures(up, "french dart").angle_rad, waist_angle, 1e-12);
}

TEST(FrenchDart, IsReachedByAPivotFromTheWaist) {
    const PivotResult moved = pivot(one_dart(), moving("waist dart", "side@20/waist"));
    expect_kept(one_dart(), moved.pattern);
    const DartFigures found = figures(moved.pattern, "waist dart");
    const DartFigures expected = figures(french(), "french dart");
    expect_near(found.a, expected.a, "lower end");
    expect_near(found.b, expected.b, "upper end");
    EXPECT_EQ(checks_of(moved.pattern), Names{});
}

TEST(DartsThatAimAtEachOther, OfOnePivotMoveAlone) {
    for (const char* place : {"side@150/waist", "armhole@50%", "neck@50%", "waist@20/side"}) {
        const PivotResult moved = pivot(two_darts(), moving("waist dart", place));
        expect_kept(two_darts(), moved.pattern);
        EXPECT_EQ(checks_of(moved.pattern), Names{}) << place;
        EXPECT_NEAR(figures(moved.pattern, "waist dart").angle_rad, waist_angle, 1e-12) << place;
        EXPECT_NEAR(figures(moved.pattern, "shoulder dart").angle_rad, waist_angle, 1e-12) << place;
        EXPECT_EQ(figures(moved.pattern, "shoulder dart").pivot, bust);
    }
}

TEST(DartsThatAimAtEachOther, OfOnePivotMergeIntoOne) {
    const Pattern merged = merge(two_darts(), {"front", "shoulder dart", "waist dart", "", ""}).pattern;
    expect_kept(two_darts(), merged);
    EXPECT_NEAR(figures(merged, "waist dart").angle_rad, 2 * waist_angle, 1e-12);
    EXPECT_NEAR(figures(merged, "waist dart").leg_a, std::hypot(20, 200), 1e-9);
    EXPECT_EQ(checks_of(merged), Names{});
}

// The shoulder dart aims at a point 5 mm above the other's.
Pattern apart() {
    Pattern pattern = two_darts();
    dart_of(pattern, "shoulder dart").point = {100, 205};
    return pattern;
}

TEST(DartsThatAimAtEachOther, OfPivotsFiveMillimetresApartDoNotMerge) {
    try {
        merge(apart(), {"front", "shoulder dart", "waist dart", "", ""});
        FAIL() << "not refused";
    } catch (const Impossible& refused) {
        EXPECT_TRUE(contains(refused.reason, "are 5.0 mm apart"));
        EXPECT_EQ(refused.remedy, "give both darts one pivot first");
    }
}

TEST(DartsThatAimAtEachOther, OfPivotsFiveMillimetresApartStaySoFarApart) {
    EXPECT_EQ(checks_of(apart()), Names{});
    for (const char* place : {"side@150/waist", "neck@50%"}) {
        const Pattern moved = pivot(apart(), moving("waist dart", place)).pattern;
        expect_kept(apart(), moved);
        EXPECT_EQ(checks_of(moved), Names{}) << place;
        const DartFigures shoulder = figures(moved, "shoulder dart");
        EXPECT_NEAR(shoulder.angle_rad, 2 * std::atan2(20, 195), 1e-12);
        EXPECT_NEAR(distance(shoulder.pivot, figures(moved, "waist dart").pivot), 5, 1e-9);
    }
    // Past the centre front, all of the shoulder turns with its dart; up to the side, nothing of it.
    EXPECT_EQ(figures(pivot(apart(), moving("waist dart", "side@150/waist")).pattern, "shoulder dart").pivot,
              (Point{100, 205}));
    const Motion closing = turn_about(bust, turn_by(-waist_angle));
    const Pattern turned = pivot(apart(), moving("waist dart", "neck@50%")).pattern;
    expect_near(figures(turned, "shoulder dart").pivot, apply(closing, Point{100, 205}), "turned pivot");
}

TEST(DartsThatAimAtEachOther, DoNotOpenInEachOthersWedge) {
    // Straight up from 5 mm below the other point, the cut would run in the other's wedge.
    EXPECT_THROW(pivot(apart(), moving("waist dart", "shoulder@30/armhole")), Impossible);
}

// Both legs bent towards the inside of the dart by the same amount.
void bend_legs(Pattern& pattern, const std::string& name) {
    const DartFigures dart = figures(pattern, name);
    const Vector across = unit(dart.b - dart.a);
    const auto on_a = [&](double share) { return between(dart.a, dart.point, share) + 4 * across; };
    const auto on_b = [&](double share) { return between(dart.point, dart.b, share) - 4 * across; };
    dart_of(pattern, name).legs = {{{{on_a(1.0 / 3), on_a(2.0 / 3)}}, {{on_b(1.0 / 3), on_b(2.0 / 3)}}}};
}

TEST(DartWithCurvedLegs, IsDrawnStraightWhereItOpensAndThatIsSaid) {
    Pattern pattern = one_dart();
    bend_legs(pattern, "waist dart");
    const PivotResult moved = pivot(pattern, moving("waist dart", "side@150/waist"));
    EXPECT_TRUE(is_said(moved.account.notes, "the curved legs are drawn straight"));
    expect_kept(pattern, moved.pattern);
    const Piece& piece = moved.pattern.pieces[0];
    EXPECT_FALSE(piece.outline.items[dart_named(piece, "waist dart")].as_dart()->legs);
    EXPECT_NEAR(figures(moved.pattern, "waist dart").leg_a, figures(moved.pattern, "waist dart").leg_b, 1e-9);
    EXPECT_EQ(checks_of(moved.pattern), Names{});
}

TEST(DartWithCurvedLegs, IsDrawnStraightWherePartOfItIsLeftAndThatIsSaidOnce) {
    Pattern pattern = one_dart();
    bend_legs(pattern, "waist dart");
    const SplitRequest request{
        "front", "waist dart", {{"side@150/waist", 0.3, "", ""}, {"neck@50%", 0.3, "", ""}}, {}, "", ""};
    const SplitResult result = split(pattern, request);
    EXPECT_EQ(std::count(result.account.notes.begin(), result.account.notes.end(),
                         "the curved legs are drawn straight"),
              1);
    expect_kept(pattern, result.pattern);
    for (const OutlineItem& item : result.pattern.pieces[0].outline.items) {
        const DartItem* dart = item.as_dart();
        EXPECT_FALSE(dart && dart->legs);
    }
}

TEST(DartWithCurvedLegs, IsDrawnStraightByAMergeAndThatIsSaid) {
    Pattern pattern = two_darts();
    bend_legs(pattern, "waist dart");
    for (const auto& [dart, with] :
         {std::pair{"shoulder dart", "waist dart"}, {"waist dart", "shoulder dart"}}) {
        const MergeResult result = merge(pattern, {"front", dart, with, "", ""});
        EXPECT_TRUE(is_said(result.account.notes, "the curved legs of \"waist dart\" are drawn straight"));
        expect_kept(pattern, result.pattern);
        EXPECT_EQ(checks_of(result.pattern), Names{});
    }
}

TEST(DartWithCurvedLegs, KeepsThemWhereItTurnsWithItsPart) {
    Pattern pattern = two_darts();
    bend_legs(pattern, "shoulder dart");
    const auto legs = *dart_of(pattern, "shoulder dart").legs;
    const double length = figures(pattern, "shoulder dart").leg_a;
    EXPECT_GT(length, std::hypot(20, 200));
    Pattern moved = pivot(pattern, moving("waist dart", "neck@50%")).pattern;
    expect_kept(pattern, moved);
    EXPECT_NEAR(figures(moved, "shoulder dart").leg_a, length, 1e-6);
    const Motion closing = turn_about(bust, turn_by(-waist_angle));
    ASSERT_TRUE(dart_of(moved, "shoulder dart").legs);
    for (std::size_t leg = 0; leg < 2; ++leg) {
        for (std::size_t k = 0; k < 2; ++k) {
            expect_near((*dart_of(moved, "shoulder dart").legs)[leg][k], apply(closing, legs[leg][k]),
                        "control");
        }
    }
    EXPECT_EQ(checks_of(moved), Names{});
}

// Low at the side, between the waist dart and the side seam.
Pattern with_fish(Pattern pattern) {
    piece_of(pattern).double_darts = {{"fish", {165, 50}, {165, 130}, {{{160, 90}, {170, 90}}}, "side"}};
    return pattern;
}
const DoubleDart& fish_of(const Pattern& pattern) {
    return pattern.pieces[0].double_darts.at(0);
}

std::vector<Point> corners_of(const DoubleDart& dart) {
    return {dart.from, dart.widest[0], dart.to, dart.widest[1]};
}
void expect_moved(const DoubleDart& before, const DoubleDart& after, const Motion& motion) {
    const std::vector<Point> from = corners_of(before);
    const std::vector<Point> to = corners_of(after);
    for (std::size_t i = 0; i < from.size(); ++i) expect_near(to[i], apply(motion, from[i]), "corner");
    EXPECT_EQ(before.name, after.name);
    EXPECT_EQ(before.press, after.press);
}

TEST(DartWithTwoPoints, TurnsWithItsPart) {
    const Pattern pattern = with_fish(one_dart());
    EXPECT_EQ(checks_of(pattern), Names{});
    const Motion closing = turn_about(bust, turn_by(-waist_angle));
    const Pattern moved = pivot(pattern, moving("waist dart", "side@250/waist")).pattern;
    expect_kept(pattern, moved);
    expect_moved(fish_of(pattern), fish_of(moved), closing);
    EXPECT_EQ(checks_of(moved), Names{});
    // Held instead, it stays where it is.
    PivotRequest held = moving("waist dart", "side@250/waist");
    held.hold = "centre front";
    expect_moved(fish_of(pattern), fish_of(pivot(pattern, held).pattern), closing);
    const Pattern below = pivot(pattern, moving("waist dart", "waist@20/side")).pattern;
    expect_moved(fish_of(pattern), fish_of(below), {});
}

TEST(DartWithTwoPoints, TurnsWithItsPartInASplit) {
    const Pattern pattern = with_fish(one_dart());
    const SplitRequest request{
        "front", "waist dart", {{"side@250/waist", 0.5, "", ""}, {"shoulder@50%", 0.5, "", ""}}, {}, "", ""};
    const Pattern after = split(pattern, request).pattern;
    expect_kept(pattern, after);
    // Half of the angle turns what lies up to the shoulder, the other half what lies up to the side.
    expect_moved(fish_of(pattern), fish_of(after), turn_about(bust, turn_by(-waist_angle)));
    EXPECT_EQ(checks_of(after), Names{});
}

TEST(DartWithTwoPoints, TurnsWithItsPartInAMerge) {
    const Pattern pattern = with_fish(two_darts());
    const Pattern after = merge(pattern, {"front", "waist dart", "shoulder dart", "", ""}).pattern;
    expect_kept(pattern, after);
    expect_moved(fish_of(pattern), fish_of(after), turn_about(bust, turn_by(-waist_angle)));
    EXPECT_EQ(checks_of(after), Names{});
}

TEST(DartWithTwoPoints, IsNotCutAndNotMoved) {
    const Pattern pattern = with_fish(one_dart());
    try {
        pivot(pattern, moving("waist dart", "side@60/waist"));
        FAIL() << "not refused";
    } catch (const Impossible& refused) {
        EXPECT_TRUE(contains(refused.reason, "would cross the dart \"fish\""));
    }
    EXPECT_THROW(pivot(pattern, moving("fish", "side@250/waist")), UnknownName);
    EXPECT_THROW(merge(pattern, {"front", "waist dart", "fish", "", ""}), UnknownName);
}

// The front cut on the fold, unfolded: darts on both halves.
Pattern opened_front() {
    Pattern pattern = one_dart();
    piece_of(pattern).cut =
        Cut{1, "centre front", false, {{"waist", CornerIs::free}, {"neck", CornerIs::free}}};
    return open(pattern, {"front"}).pattern;
}

TEST(AsymmetricDart, CrossesTheCentreFrontOfAnOpenedFront) {
    const Pattern whole = opened_front();
    EXPECT_EQ(checks_of(whole), Names{});
    PivotRequest across = moving("right waist dart", "left shoulder@50%");
    across.hold = "right side";
    const PivotResult moved = pivot(whole, across);
    expect_kept(whole, moved.pattern);
    EXPECT_EQ(checks_of(moved.pattern), Names{});
    const DartFigures dart = figures(moved.pattern, "right waist dart");
    EXPECT_NEAR(dart.angle_rad, waist_angle, 1e-12);
    // From the right pivot past the centre front to the left half's shoulder.
    EXPECT_GT(dart.leg_a, 250);
    EXPECT_NEAR(figures(moved.pattern, "left waist dart").angle_rad, waist_angle, 1e-12);
    PivotRequest home =
        moving("right waist dart", testing::place_of_dart(whole.pieces[0], "right waist dart"));
    home.hold = "right side";
    const Pattern back = pivot(moved.pattern, home).pattern;
    expect_kept(whole, back);
    for (const char* name : {"right waist dart", "left waist dart"}) {
        EXPECT_LE(distance(figures(back, name).a, figures(whole, name).a), 1e-8) << name;
        EXPECT_LE(distance(figures(back, name).b, figures(whole, name).b), 1e-8) << name;
    }
    EXPECT_EQ(back.pieces[0].marks.size(), whole.pieces[0].marks.size()) << "the centre line is one again";
}

TEST(AsymmetricDart, DoesNotRunThroughTheOtherHalfsDart) {
    // Level with both pivots: the cut would end the other side of the left dart's wedge.
    EXPECT_THROW(pivot(opened_front(), moving("right waist dart", "left waist@20/left side")), Impossible);
}

TEST(RadiatingDarts, OfOnePivotCloseToOne) {
    const SplitRequest request{"front",
                               "waist dart",
                               {{"neck@15/shoulder", 0.25, "first", ""},
                                {"neck@40/shoulder", 0.5, "second", ""},
                                {"neck@65/shoulder", 0.25, "third", ""}},
                               {},
                               "",
                               ""};
    const Pattern radiating = split(one_dart(), request).pattern;
    expect_kept(one_dart(), radiating);
    EXPECT_EQ(checks_of(radiating), Names{});
    EXPECT_NEAR(figures(radiating, "first").angle_rad, waist_angle / 4, 1e-12);
    EXPECT_NEAR(figures(radiating, "second").angle_rad, waist_angle / 2, 1e-12);
    for (const char* name : {"first", "second", "third"}) EXPECT_EQ(figures(radiating, name).pivot, bust);
    Pattern closed = merge(radiating, {"front", "first", "second", "", ""}).pattern;
    closed = merge(closed, {"front", "third", "second", "", ""}).pattern;
    expect_kept(one_dart(), closed);
    EXPECT_EQ(checks_of(closed), Names{});
    PivotRequest whole = moving("waist dart", "neck@40/shoulder");
    whole.name = "second";
    const Pattern direct = pivot(one_dart(), whole).pattern;
    expect_near(figures(closed, "second").a, figures(direct, "second").a, "first end");
    expect_near(figures(closed, "second").b, figures(direct, "second").b, "second end");
}

// A generated piece with a small dart of two points about its drilled hole, which lies in cloth.
testing::GeneratedPiece any_piece_with_fish(int darts) {
    testing::GeneratedPiece out = testing::any_piece(true, darts);
    Piece& piece = out.pattern.pieces[0];
    const Point at = std::get<DrillMark>(piece.marks[1].what).at;
    const Vector along = unit(at - out.pivot);
    const double r = out.size_mm / 2;
    piece.double_darts = {{"fish",
                           at - 0.05 * r * along,
                           at + 0.05 * r * along,
                           {{at - 0.02 * r * perpendicular(along), at + 0.02 * r * perpendicular(along)}},
                           ""}};
    return out;
}

RC_GTEST_PROP(DartWithTwoPointsProperty, TurnsByTheAccountsTurnOrNotAtAll, ()) {
    const testing::GeneratedPiece before = any_piece_with_fish(*rc::gen::inRange(1, 4));
    const std::string place = testing::any_place(before.pattern.pieces[0]);
    RC_PRE(!place.empty());
    PivotRequest request = moving(before.darts[0], place);
    request.piece = "piece";
    PivotResult result;
    try {
        result = pivot(before.pattern, request);
    } catch (const Impossible&) {
        RC_DISCARD("the cut would cross the dart, or the place is hidden");
    }
    const Motion turn = turn_about(before.pivot, turn_by(result.account.turn_rad));
    const std::vector<Point> from = corners_of(fish_of(before.pattern));
    const std::vector<Point> to = corners_of(fish_of(result.pattern));
    const Point hole = std::get<DrillMark>(before.pattern.pieces[0].marks[1].what).at;
    bool has_hole_turned = false;
    for (const Mark& mark : result.pattern.pieces[0].marks) {
        const auto* drill = std::get_if<DrillMark>(&mark.what);
        if (drill) has_hole_turned = distance(drill->at, hole) > testing::rounding_mm;
    }
    for (std::size_t i = 0; i < from.size(); ++i) {
        const Point expected = has_hole_turned ? apply(turn, from[i]) : from[i];
        RC_ASSERT(distance(to[i], expected) <= testing::rounding_mm);
    }
    RC_ASSERT(std::abs(cloth_area(before.pattern.pieces[0]) - cloth_area(result.pattern.pieces[0])) <=
              1e-11 * cloth_area(before.pattern.pieces[0]));
}

RC_GTEST_PROP(DartWithCurvedLegsProperty, KeepsRunsAnglesAndAreaAndSaysThatItIsDrawnStraight, ()) {
    testing::GeneratedPiece before = testing::any_piece(true, *rc::gen::inRange(1, 4));
    const std::string place = testing::any_place(before.pattern.pieces[0]);
    RC_PRE(!place.empty());
    const DartFigures straight = figures(before.pattern, before.darts[0]);
    bend_legs(before.pattern, before.darts[0]);
    PivotRequest request = moving(before.darts[0], place);
    request.piece = "piece";
    PivotResult result;
    try {
        result = pivot(before.pattern, request);
    } catch (const Impossible&) {
        RC_DISCARD("the place is hidden, or the bent legs differ");
    }
    testing::expect_same_runs(before.pattern.pieces[0], result.pattern.pieces[0]);
    const DartFigures moved = figures(result.pattern, before.darts[0]);
    RC_ASSERT(std::abs(moved.angle_rad - straight.angle_rad) <= 1e-12);
    RC_ASSERT(is_said(result.account.notes, "the curved legs are drawn straight"));
}

}  // namespace
}  // namespace dartwright
