// Darts with curved legs and darts with two points, as operations meet them.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "darts/true_fronts.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/split.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

using namespace true_fronts;

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
    // Beyond the cut, it stays where it is.
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
    const testing::GeneratedPiece before = any_piece_with_fish(*testing::evenly(1, 4));
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
    testing::GeneratedPiece before = testing::any_piece(true, *testing::evenly(1, 4));
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
