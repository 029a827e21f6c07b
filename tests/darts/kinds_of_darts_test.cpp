// Kinds of darts that operations meet: steep ones, ones that aim at each other, ones that cross the centre
// front, and ones that radiate from one pivot.

#include <gtest/gtest.h>

#include "darts/true_fronts.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/split.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

using namespace true_fronts;

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

}  // namespace
}  // namespace dartwright
