// Pivots of one piece typed by hand: what is chosen, what is carried along, what is refused.

#include "dartwright/darts/pivot.hpp"

#include <gtest/gtest.h>

#include "darts/plain_front.hpp"

namespace dartwright {
namespace {

PivotRequest to(const std::string& place) {
    PivotRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = place;
    return request;
}

std::string refusal(const Pattern& pattern, const PivotRequest& request) {
    try {
        pivot(pattern, request);
    } catch (const Impossible& refused) {
        EXPECT_FALSE(refused.remedy.empty()) << refused.reason;
        return refused.what();
    }
    return "not refused";
}

TEST(Pivot, MovesTheWholeDartToTheSide) {
    const PivotResult moved = pivot(plain(), to("side@100/armhole"));
    const DartFigures f = figures(moved.pattern, "waist dart");
    EXPECT_NEAR(degrees(f.angle_rad), 2 * degrees(std::atan(20.0 / 200)), 1e-10);
    // The place is (200, 200), level with the pivot and 100 mm from it.
    EXPECT_NEAR(f.pivot_leg_a, 100, 1e-9);
    EXPECT_NEAR(f.pivot_leg_b, 100, 1e-9);
    EXPECT_NEAR(f.back_off, 20, 1e-9);
    EXPECT_NEAR(f.b.x, 200, 1e-9) << "the armhole's side of the new mouth stays";
    EXPECT_NEAR(f.b.y, 200, 1e-9);
    EXPECT_LT(f.a.y, 200) << "the waist's side swings down";
    EXPECT_EQ(moved.account.turned, (std::vector<std::string>{"waist", "side"}));
    EXPECT_EQ(moved.account.held.back(), "waist");
    EXPECT_EQ(moved.account.angle_left_rad, 0);
}

TEST(Pivot, ClosedEdgeIsOneStraightLineOnlyWhereItRunsOn) {
    // About the pivot the two halves of this waist meet at the dart's angle: two items, and a warning.
    const PivotResult moved = pivot(plain(), to("side@100/armhole"));
    ASSERT_EQ(moved.account.notes.size(), 2u);
    EXPECT_TRUE(contains(moved.account.notes[1], "corner of 11.4 degrees in \"waist\""));
    const PivotResult back = pivot(moved.pattern, to("waist@80/centre front"));
    EXPECT_EQ(back.pattern.pieces[0].outline.items.size(), plain().pieces[0].outline.items.size());
}

TEST(Pivot, ByAngleShareAndIntakeAgree) {
    PivotRequest by_share = to("shoulder@50%");
    by_share.part.share = 0.5;
    PivotRequest by_angle = to("shoulder@50%");
    by_angle.part.angle_rad = std::atan(20.0 / 200);
    PivotRequest by_intake = to("shoulder@50%");
    const double leg = std::hypot(200, 20);
    by_intake.part.intake_mm = 40 - 2 * leg * std::sin(std::atan(0.1) / 2);
    for (const PivotRequest& request : {by_share, by_angle, by_intake}) {
        const PivotResult moved = pivot(plain(), request);
        EXPECT_NEAR(moved.account.angle_rad, std::atan(0.1), 1e-9);
        EXPECT_NEAR(moved.account.angle_left_rad, std::atan(0.1), 1e-9);
        EXPECT_EQ(moved.account.new_dart, "shoulder dart");
        EXPECT_NEAR(figures(moved.pattern, "waist dart").angle_rad, std::atan(0.1), 1e-9);
        EXPECT_NEAR(figures(moved.pattern, "waist dart").back_off, 20, 1e-9);
        EXPECT_NEAR(figures(moved.pattern, "shoulder dart").angle_rad, std::atan(0.1), 1e-9);
    }
}

TEST(Pivot, SetsBackOffNameAndPress) {
    PivotRequest request = to("side@100/armhole");
    request.back_off_mm = 25;
    request.name = "side dart";
    request.press = "waist";
    const PivotResult moved = pivot(plain(), request);
    EXPECT_NEAR(figures(moved.pattern, "side dart").back_off, 25, 1e-9);
    const Piece& piece = moved.pattern.pieces[0];
    EXPECT_EQ(piece.outline.items[dart_named(piece, "side dart")].as_dart()->press, "waist");
    ASSERT_EQ(moved.pattern.made.size(), 1u);
    EXPECT_EQ(moved.pattern.made[0].operation, "pivot");
}

TEST(Pivot, PressOnItsOwnRunIsChangedAndSaid) {
    const PivotResult level = pivot(plain(), to("side@100/armhole"));
    const Piece& piece = level.pattern.pieces[0];
    EXPECT_EQ(piece.outline.items[dart_named(piece, "waist dart")].as_dart()->press, "waist");
    EXPECT_TRUE(contains(level.account.notes[0], "pressed towards \"waist\" instead"));
    PivotRequest upright = to("shoulder@50%");
    upright.press = "shoulder";
    const PivotResult up = pivot(plain(), upright);
    const Piece& other = up.pattern.pieces[0];
    EXPECT_EQ(other.outline.items[dart_named(other, "waist dart")].as_dart()->press, "centre front");
}

TEST(Pivot, CarriesMarksAndNotchesWithTheTurnedPart) {
    const Pattern before = plain();
    const PivotResult moved = pivot(before, to("side@100/armhole"));
    const Piece& piece = moved.pattern.pieces[0];
    EXPECT_EQ(piece.notches, before.pieces[0].notches);
    const Motion turn = turn_about({100, 200}, turn_by(moved.account.turn_rad));
    std::vector<std::string> names;
    for (const Mark& mark : piece.marks) names.push_back(mark.name);
    // The midriff crosses the closing dart: its part in the wedge is gone, its two others meet at the joint.
    EXPECT_EQ(names, (std::vector<std::string>{"bust line", "midriff", "midriff", "hole", "held hole"}));
    const Point hole = std::get<DrillMark>(piece.marks[3].what).at;
    EXPECT_NEAR(distance(hole, apply(turn, Point{180, 20})), 0, 1e-9);
    EXPECT_EQ(std::get<DrillMark>(piece.marks[4].what).at, (Point{20, 20}));
    const auto& held = std::get<LineMark>(piece.marks[1].what).points;
    const auto& turned = std::get<LineMark>(piece.marks[2].what).points;
    EXPECT_NEAR(distance(held.back(), turned.front()), 0, 1e-9);
    EXPECT_EQ(std::get<LineMark>(piece.marks[0].what).points.size(), 2u)
        << "a line of the held part stays whole";
}

TEST(Pivot, HoldChoosesThePartThatStays) {
    PivotRequest request = to("side@100/armhole");
    request.hold = "side";
    EXPECT_TRUE(contains(refusal(plain(), request), "lies on both sides of the cut"));
    request = to("shoulder@50%");
    request.hold = "side";
    const PivotResult moved = pivot(plain(), request);
    EXPECT_EQ(moved.account.held, (std::vector<std::string>{"waist", "side", "armhole", "shoulder"}));
    // The fold turned, and the grain with the edge it runs along.
    const Piece& piece = moved.pattern.pieces[0];
    EXPECT_NEAR(std::abs(angle_from({0, 300}, piece.grain->to - piece.grain->from)), moved.account.angle_rad,
                1e-12);
}

TEST(Pivot, ToACornerMakesADartBetweenTwoNames) {
    const PivotResult moved = pivot(plain(), to("side@0/armhole"));
    const auto runs = runs_of(moved.pattern.pieces[0].outline);
    EXPECT_EQ(find_run(runs, "side")->corner_darts_after.size(), 1u);
    EXPECT_NEAR(find_run(runs, "side")->length, 300, 1e-9);
    const PivotResult back = pivot(moved.pattern, to("waist@80/centre front"));
    EXPECT_NEAR(figures(back.pattern, "waist dart").intake, 40, 1e-9);
}

TEST(Pivot, OnItsOwnEdge) {
    const PivotResult moved = pivot(plain(), to("waist@30/side"));
    const auto runs = runs_of(moved.pattern.pieces[0].outline);
    EXPECT_NEAR(find_run(runs, "waist")->length, 160, 1e-9);
    EXPECT_NEAR(dart_distances(moved.pattern.pieces[0].outline, *find_run(runs, "waist"))[0], 130, 1e-9);
}

TEST(Pivot, SnapsPivotsThatAreNearlyTheSame) {
    PivotRequest half = to("side@100/armhole");
    half.part.share = 0.5;
    Pattern two = pivot(plain(), half).pattern;
    Piece& piece = two.pieces[0];
    piece.outline.items[dart_named(piece, "side dart")].as_dart()->pivot = Point{100.04, 200};
    const PivotResult moved = pivot(two, to("shoulder@50%"));
    EXPECT_TRUE(contains(moved.account.notes[0], "is taken as the same"));
    EXPECT_EQ(figures(moved.pattern, "side dart").pivot, figures(moved.pattern, "waist dart").pivot);
}

TEST(PivotRefuses, WhatGeometryDoesNotAllow) {
    EXPECT_TRUE(contains(refusal(plain(), to("centre front@50%")), "inside the fold"));
    EXPECT_TRUE(
        contains(refusal(plain(), to("waist@80.5/centre front")), "0.5 mm from the mouth of \"waist dart\""));
    EXPECT_TRUE(contains(refusal(plain(), to("side@0.4/waist")), "side@0/waist"));
    PivotRequest much = to("side@50%");
    much.part.angle_rad = radians(20);
    EXPECT_TRUE(contains(refusal(plain(), much), "has only 11.4 degrees"));
    much.part = {std::nullopt, 1.5, std::nullopt};
    EXPECT_TRUE(contains(refusal(plain(), much), "move all of it"));
    PivotRequest far = to("side@100/armhole");
    far.back_off_mm = 51;
    EXPECT_TRUE(contains(refusal(plain(), far), "at most 50.0 mm"));
}

TEST(PivotRefuses, ADartThatIsNotTrue) {
    Pattern uneven = plain();
    uneven.pieces[0].outline.items[1].to = {120, -2};
    EXPECT_TRUE(contains(refusal(uneven, to("side@50%")), "legs of \"waist dart\" differ by 2.0 mm"));
    Pattern aside = plain();
    aside.pieces[0].outline.items[1].as_dart()->point = {102, 180};
    EXPECT_TRUE(contains(refusal(aside, to("side@50%")), "off its centre line"));
    Pattern open = plain();
    open.pieces[0].outline.items.back().to = {0, 3};
    EXPECT_TRUE(contains(refusal(open, to("side@50%")), "does not close, by 3.0 mm"));
}

TEST(PivotRefuses, ACutThatLeavesThePieceAndNamesTheNearestPlace) {
    // A deep notch in the side hides its upper part from the pivot.
    Pattern hidden = plain();
    auto& items = hidden.pieces[0].outline.items;
    items[3].to = {200, 100};
    items.insert(items.begin() + 4, OutlineItem{EdgeItem{"side", StraightShape{}, 0}, Point{120, 260}});
    items.insert(items.begin() + 5, OutlineItem{EdgeItem{"side", StraightShape{}, 0}, Point{200, 300}});
    const std::string said = refusal(hidden, to("side@10/armhole"));
    EXPECT_TRUE(contains(said, "would cross edge \"side\""));
    EXPECT_TRUE(contains(said, "the nearest place on that edge that can be reached is side@"));
    const std::string place = said.substr(said.rfind("side@"));
    EXPECT_NO_THROW(pivot(hidden, to(place))) << place;
}

TEST(PivotRefuses, ACutThroughAnotherDart) {
    PivotRequest half = to("shoulder@50%");
    half.part.share = 0.5;
    Pattern two = pivot(plain(), half).pattern;
    auto& items = two.pieces[0].outline.items;
    // A dart from the side that ends beyond the line from the pivot to the armhole's lower end.
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (!items[i].as_edge() || items[i].as_edge()->edge != "side") continue;
        const Point end = items[i].to;
        const Point start = start_of_item(two.pieces[0].outline, i);
        const Vector up = unit(end - start);
        items[i].to = start + 100 * up;
        DartItem dart;
        dart.name = "side dart";
        dart.point = start + 110 * up + 80 * perpendicular(up);
        items.insert(items.begin() + std::ptrdiff_t(i) + 1, OutlineItem{dart, start + 120 * up});
        items.insert(items.begin() + std::ptrdiff_t(i) + 2,
                     OutlineItem{EdgeItem{"side", StraightShape{}, 0}, end});
        break;
    }
    EXPECT_TRUE(contains(refusal(two, to("side@95/waist")), "would cross dart \"side dart\"") ||
                contains(refusal(two, to("side@150/waist")), "would cross dart \"side dart\""));
}

TEST(PivotRefuses, AnOverlapAfterTurning) {
    // A hook of the waist reaches round the dart: turning its side would push it into the held part.
    Pattern hooked = plain();
    Outline& outline = hooked.pieces[0].outline;
    outline.start = {0, -60};
    outline.items.back().to = {0, -60};
    outline.items.insert(outline.items.begin(),
                         OutlineItem{EdgeItem{"waist", StraightShape{}, 0}, Point{112, -5}});
    const std::string said = refusal(hooked, to("side@50%"));
    EXPECT_TRUE(contains(said, "overlap after turning")) << said;
}

TEST(PivotRefuses, WrongWords) {
    EXPECT_THROW(pivot(plain(), to("sleeve@50%")), UnknownName);
    EXPECT_THROW(pivot(plain(), to("side@10/neck")), UnknownName);
    EXPECT_THROW(pivot(plain(), to("side@10")), BadWords);
    EXPECT_THROW(pivot(plain(), to("side@900/waist")), BeyondTheRun);
    PivotRequest two_ways = to("side@50%");
    two_ways.part.share = 0.5;
    two_ways.part.intake_mm = 5;
    EXPECT_THROW(pivot(plain(), two_ways), BadWords);
    PivotRequest none = to("side@50%");
    none.part.share = 0.0;
    EXPECT_THROW(pivot(plain(), none), BadWords);
}

TEST(Pivot, OpensInTheFoldOnceThatIsACentreSeam) {
    PivotRequest request = to("centre front@180/waist");
    EXPECT_TRUE(contains(refusal(plain(), request), "name a centre seam"));
    request.centre_seam = "centre front";
    const PivotResult moved = pivot(plain(), request);
    const Piece& piece = moved.pattern.pieces[0];
    EXPECT_EQ(piece.cut->fold, "");
    EXPECT_EQ(piece.cut->quantity, 2);
    ASSERT_EQ(moved.pattern.seams.size(), 1u);
    EXPECT_TRUE(moved.pattern.seams[0].joins[1][0].mirrored);
    // The place is 100 mm beside the pivot and 20 below it; mouths are in proportion to their legs.
    const double mouth = 40 * std::hypot(100, 20) / std::hypot(20, 200);
    EXPECT_NEAR(figures(moved.pattern, "waist dart").intake, mouth, 1e-9);
    const auto runs = runs_of(piece.outline);
    EXPECT_NEAR(find_run(runs, "centre front")->length, 340, 1e-9);
    request.centre_seam.clear();
    Pattern pair = plain();
    pair.pieces[0].cut->fold.clear();
    EXPECT_NEAR(figures(pivot(pair, request).pattern, "waist dart").intake, mouth, 1e-9);
}

TEST(Pivot, RefusesACentreSeamWithoutAFoldOrOfATakenName) {
    PivotRequest request = to("side@100/armhole");
    request.centre_seam = "centre front";
    Pattern pattern = plain();
    pattern.pieces[0].cut->fold.clear();
    EXPECT_TRUE(contains(refusal(pattern, request), "is not cut on a fold"));
    pattern = plain();
    const SeamSide side{{"front", "side", "armhole", false}};
    pattern.seams.push_back({"centre front", {side, side}, {}, {}});
    EXPECT_THROW(pivot(pattern, request), BadWords);
}

}  // namespace
}  // namespace dartwright
