// Points and pivots moved: by example.

#include "dartwright/darts/repoint.hpp"

#include <gtest/gtest.h>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/replay.hpp"

namespace dartwright {
namespace {

RepointRequest to_back_off(double mm) {
    RepointRequest request{"front", "waist dart", mm, {}, {}, {}};
    return request;
}
RepointRequest to_point(Point point) {
    return {"front", "waist dart", {}, point, {}, {}};
}
RepointRequest to_pivot(Point pivot) {
    return {"front", "", {}, {}, pivot, {}};
}

Pattern without_own_pivot() {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].as_dart()->pivot.reset();
    return pattern;
}

// A second dart, in the side, that aims at the waist dart's pivot.
Pattern with_side_dart() {
    Pattern pattern = plain();
    std::vector<OutlineItem>& items = pattern.pieces[0].outline.items;
    items[3].to = {200, 190};
    DartItem dart;
    dart.name = "side dart";
    dart.pivot = Point{100, 200};
    dart.point = {125, 200};
    items.insert(items.begin() + 4, {dart, {200, 210}});
    items.insert(items.begin() + 5, {EdgeItem{"side", StraightShape{}, 0}, {200, 300}});
    return pattern;
}

std::vector<std::string> checks_of_dart(const Pattern& pattern) {
    std::vector<std::string> out;
    for (const Finding& finding : check(pattern).findings) {
        if (!finding.dart.empty() && finding.severity == Severity::fault) out.push_back(finding.check);
    }
    return out;
}

TEST(Repoint, ABackOffMovesThePointAndNothingElse) {
    const RepointResult done = repoint(plain(), to_back_off(30));
    Pattern expected = plain();
    expected.pieces[0].outline.items[1].as_dart()->point = {100, 170};
    const Outline& outline = done.pattern.pieces[0].outline;
    EXPECT_NEAR(distance(outline.items[1].as_dart()->point, {100, 170}), 0, 1e-12);
    expected.pieces[0].outline.items[1].as_dart()->point = outline.items[1].as_dart()->point;
    EXPECT_EQ(done.pattern.pieces[0], expected.pieces[0]);
    ASSERT_EQ(done.account.darts.size(), 1u);
    EXPECT_NEAR(done.account.darts[0].before.leg_a, std::hypot(20, 180), 1e-12);
    EXPECT_NEAR(done.account.darts[0].after.leg_a, std::hypot(20, 170), 1e-12);
    // A straight waist closes to a V by the angle at the point.
    EXPECT_NEAR(*done.account.darts[0].mouth_after_deg, degrees(2 * std::atan(20.0 / 170)), 1e-9);
    EXPECT_TRUE(contains(done.account.notes.at(0), "a corner of 13.4 degrees over the mouth; true the dart"));
}

TEST(Repoint, ABackOffThatTheDartAsksForBecomesTheNewOne) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].as_dart()->back_off = 20;
    for (const double mm : {5.0, 40.0}) {
        const Pattern done = repoint(pattern, to_back_off(mm)).pattern;
        EXPECT_EQ(done.pieces[0].outline.items[1].as_dart()->back_off, mm);
        EXPECT_EQ(checks_of_dart(done), std::vector<std::string>{"dart-mouth"});
    }
}

TEST(Repoint, ATuckStaysOneWhileItsLegsAreLongEnough) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].as_dart()->stitched = 150;
    const auto stitched_at = [&](double back_off_mm) {
        const RepointResult done = repoint(pattern, to_back_off(back_off_mm));
        return done.pattern.pieces[0].outline.items[1].as_dart()->stitched;
    };
    EXPECT_EQ(stitched_at(30), 150);
    EXPECT_EQ(stitched_at(60), std::nullopt);
    EXPECT_TRUE(contains(repoint(pattern, to_back_off(60)).account.notes.at(0), "it is sewn to its point"));
}

TEST(Repoint, NoBackOffPutsThePointOnThePivot) {
    const DartFigures f = figures(repoint(plain(), to_back_off(0)).pattern, "waist dart");
    EXPECT_EQ(f.point, f.pivot);
    EXPECT_EQ(f.pivot, (Point{100, 200}));
}

TEST(Repoint, APivotIsKeptWhereThePointWasThePivot) {
    const DartFigures f = figures(repoint(without_own_pivot(), to_back_off(20)).pattern, "waist dart");
    EXPECT_EQ(f.pivot, (Point{100, 180}));
    EXPECT_NEAR(f.back_off, 20, 1e-12);
}

TEST(Repoint, APointOnTheCentreLineIsABackOff) {
    const Pattern pointed = repoint(plain(), to_point({100.05, 170})).pattern;
    const Pattern backed_off = repoint(plain(), to_back_off(30)).pattern;
    EXPECT_EQ(pointed.pieces, backed_off.pieces);
    const RepointResult done = repoint(plain(), to_point({100.05, 170}));
    EXPECT_TRUE(
        contains(done.account.notes.at(0), "the place was 0.050 mm off the centre line and was put on it"));
}

TEST(Repoint, BringsLegsWithinTheToleranceToTheirMean) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].to = Point{100, 200} + (std::hypot(20, 200) + 0.4) * unit({20, -200});
    const RepointResult done = repoint(pattern, to_back_off(30));
    const DartFigures f = figures(done.pattern, "waist dart");
    EXPECT_NEAR(f.leg_a, f.leg_b, 1e-12);
    EXPECT_NEAR(f.pivot_leg_a, std::hypot(20, 200) + 0.2, 1e-12);
    EXPECT_TRUE(contains(done.account.notes.at(0), "differed by 0.400 mm; both ends were brought"));
}

TEST(Repoint, APointBesideTheCentreLineTurnsTheMouthOfADartWithoutAPivotOfItsOwn) {
    const RepointResult done = repoint(without_own_pivot(), to_point({105, 150}));
    const DartFigures f = figures(done.pattern, "waist dart");
    EXPECT_EQ(f.point, (Point{105, 150}));
    const Piece& piece = done.pattern.pieces[0];
    EXPECT_FALSE(piece.outline.items[dart_named(piece, "waist dart")].as_dart()->pivot);
    EXPECT_NEAR(f.leg_a, f.leg_b, 1e-12);
    EXPECT_NEAR(f.intake, 40, 0.7);
    EXPECT_NEAR(distance(middle(f.a, f.b), {100, 0}), 0, 0.5);
    EXPECT_NEAR(degrees(done.account.darts[0].turned_rad), -degrees(std::atan(5.0 / 150)), 1e-9);
    EXPECT_NEAR(*done.account.darts[0].mouth_after_deg, 0, 1e-6);
    for (const RunChange& run : done.account.runs) EXPECT_NEAR(run.before_mm, run.after_mm, 1e-6);
}

TEST(Repoint, ANewPivotTakesAllItsDartsAndTheDrillAlong) {
    Pattern pattern = with_side_dart();
    pattern.pieces[0].marks.push_back({DrillMark{{100, 200}}, "bust point"});
    pattern.pieces[0].marks.push_back({DrillMark{{125, 200}}, "side point"});
    const RepointResult done = repoint(pattern, to_pivot({95, 190}));
    ASSERT_EQ(done.account.darts.size(), 2u);
    for (const char* dart : {"waist dart", "side dart"}) {
        const DartFigures f = figures(done.pattern, dart);
        EXPECT_EQ(f.pivot, (Point{95, 190}));
        EXPECT_NEAR(f.pivot_leg_a, f.pivot_leg_b, 1e-12);
        EXPECT_NEAR(f.off_bisector, 0, 1e-12);
    }
    EXPECT_NEAR(figures(done.pattern, "waist dart").back_off, 20, 1e-12);
    EXPECT_NEAR(figures(done.pattern, "side dart").back_off, 25, 1e-12);
    EXPECT_EQ(done.account.marks, (std::vector<std::string>{"bust point", "side point"}));
    const std::vector<Mark>& marks = done.pattern.pieces[0].marks;
    EXPECT_EQ(std::get<DrillMark>(marks[marks.size() - 2].what).at, (Point{95, 190}));
    EXPECT_EQ(std::get<DrillMark>(marks.back().what).at, figures(done.pattern, "side dart").point);
}

TEST(Repoint, SaysWhichLineStaysBehind) {
    Pattern pattern = plain();
    pattern.pieces[0].marks.push_back({LineMark{{{0, 200}, {200, 200}}}, "bust level"});
    const RepointResult done = repoint(pattern, to_pivot({100, 190}));
    EXPECT_TRUE(contains(done.account.notes.back(), "\"bust level\" runs through the old place and stays"));
}

TEST(Repoint, APivotAlongTheOnlyCentreLineLeavesTheMouthAlone) {
    const RepointResult done = repoint(plain(), to_pivot({100, 190}));
    const DartFigures f = figures(done.pattern, "waist dart");
    EXPECT_EQ(f.a, (Point{80, 0}));
    EXPECT_EQ(f.b, (Point{120, 0}));
    EXPECT_NEAR(distance(f.pivot, {100, 190}), 0, 1e-12);
    EXPECT_NEAR(f.back_off, 20, 1e-12);
}

TEST(Repoint, WithoutASpanOnlyBringsTheEdgeToTheNewEnds) {
    RepointRequest request = to_pivot({90, 190});
    request.span_mm = 0;
    const RepointResult done = repoint(plain(), request);
    EXPECT_EQ(done.pattern.pieces[0].outline.items.size(), plain().pieces[0].outline.items.size());
    EXPECT_EQ(done.account.darts[0].span_mm, (std::array<double, 2>{0, 0}));
    for (const RunChange& run : done.account.runs) EXPECT_NEAR(run.before_mm, run.after_mm, 1e-6);
}

TEST(Repoint, OfACornerDartSaysWhatTheCornerIs) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[2].as_edge()->edge = "side waist";
    for (Notch& notch : pattern.pieces[0].notches)
        if (notch.from == "waist") notch.from = "side waist";
    const RepointResult done = repoint(pattern, to_pivot({95, 190}));
    EXPECT_FALSE(done.account.darts[0].mouth_after_deg);
    EXPECT_TRUE(contains(done.account.notes.back(), "the corner of \"waist\" and \"side waist\" is"));
}

TEST(Repoint, MovesTheDartsThatAreMeantOfSeveralPivots) {
    Pattern pattern = with_side_dart();
    DartItem& side = *pattern.pieces[0].outline.items[4].as_dart();
    side.pivot = Point{110, 200};
    EXPECT_THROW(repoint(pattern, to_pivot({95, 190})), BadWords);
    RepointRequest request = to_pivot({120, 190});
    request.from = Point{110.05, 200};
    EXPECT_EQ(figures(repoint(pattern, request).pattern, "waist dart").pivot, (Point{100, 200}));
    EXPECT_EQ(figures(repoint(pattern, request).pattern, "side dart").pivot, (Point{120, 190}));
    request.from = Point{95, 190};
    EXPECT_THROW(repoint(pattern, request), BadWords);
    request = to_pivot({95, 190});
    request.dart = "waist dart";
    EXPECT_EQ(figures(repoint(pattern, request).pattern, "side dart").pivot, (Point{110, 200}));
}

TEST(Repoint, IsReplayed) {
    Pattern pattern = repoint(with_side_dart(), to_pivot({95, 190})).pattern;
    pattern = repoint(pattern, to_back_off(31)).pattern;
    const Pattern again = replay(with_side_dart(), pattern.made).pattern;
    EXPECT_EQ(again.pieces, pattern.pieces);
    EXPECT_EQ(pattern.made[0].request[2], (std::pair<std::string, std::string>{"pivot", "95mm,190mm"}));
}

template <class Error>
std::string refusal(const Pattern& pattern, const RepointRequest& request) {
    try {
        repoint(pattern, request);
    } catch (const Error& error) {
        return error.what();
    }
    return "not refused";
}

TEST(Repoint, RefusesAPointThatItsPivotDoesNotServe) {
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_point({103, 170})),
                         "3.0 mm beside it; the nearest point that does is (100.0, 170.0) mm"));
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_point({100, 210})), "(100.0, 200.0) mm"));
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_point({100, 50})), "at most 100.4 mm"));
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_back_off(150)), "at most 100.4 mm"));
    EXPECT_TRUE(contains(refusal<BadWords>(plain(), to_back_off(-1)), "expected 0 or more"));
}

TEST(Repoint, RefusesAPivotWhereNoDartCanAim) {
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_pivot({300, 200})), "outside the piece"));
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_pivot({100, 25})), "20.0 mm short of its pivot"));
    EXPECT_TRUE(contains(refusal<Impossible>(plain(), to_pivot({199, 60})), "would have to turn by"));
    Pattern crossed = plain();
    crossed.pieces[0].double_darts.push_back({"inner", {60, 120}, {60, 180}, {{{55, 150}, {65, 150}}}, ""});
    EXPECT_TRUE(
        contains(refusal<Impossible>(crossed, to_pivot({40, 220})), "would cross the dart \"inner\""));
    Pattern other = with_side_dart();
    other.pieces[0].outline.items[4].as_dart()->pivot = Point{120, 200};
    RepointRequest request = to_pivot({190, 200});
    request.dart = "waist dart";
    EXPECT_TRUE(contains(refusal<Impossible>(other, request), "in the wedge of \"side dart\""));
}

TEST(Repoint, NamesANearestPivotThatWillDo) {
    for (const Point wanted : {Point{300, 200}, Point{100, -30}, Point{199, 60}, Point{195, 20}}) {
        const std::string said = refusal<Impossible>(plain(), to_pivot(wanted));
        const std::string before = "will do is (";
        ASSERT_TRUE(contains(said, before));
        const std::string place = said.substr(said.find(before) + before.size());
        const Point nearest = parse_point(place.substr(0, place.find(')')));
        EXPECT_NO_THROW(repoint(plain(), to_pivot(nearest))) << said;
    }
}

TEST(Repoint, RefusesWhatIsNotTrueOrNotSaid) {
    Pattern untrue = plain();
    untrue.pieces[0].outline.items[1].to = {120, -3};
    EXPECT_TRUE(contains(refusal<Impossible>(untrue, to_back_off(30)), "true the dart first"));
    EXPECT_THROW(repoint(plain(), {"front", "no dart", 3.0, {}, {}, {}}), UnknownName);
    EXPECT_THROW(repoint(plain(), {"front", "", 3.0, {}, {}, {}}), BadWords);
    EXPECT_THROW(repoint(plain(), {"front", "waist dart", {}, {}, {}, {}}), BadWords);
    EXPECT_THROW(repoint(plain(), {"front", "waist dart", 3.0, {}, Point{}, {}}), BadWords);
    EXPECT_THROW(repoint(plain(), to_pivot({std::nan(""), 0})), BadWords);
    Pattern bare = plain();
    bare.pieces[0].outline.items.erase(bare.pieces[0].outline.items.begin() + 1);
    bare.pieces[0].outline.items[0].to = {120, 0};
    EXPECT_TRUE(contains(refusal<Impossible>(bare, to_pivot({90, 190})), "has no dart"));
}

// A point drawn on the dart's own mouth leaves a leg of no length; it is mended like any other.
TEST(Repoint, MendsADartWhosePointLiesOnItsMouth) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].as_dart()->point = {80, 0};
    RepointRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.back_off_mm = 20;
    const DartFigures f = figures(repoint(pattern, request).pattern, "waist dart");
    EXPECT_NEAR(f.point.y, 180, 1e-9);
    EXPECT_NEAR(f.leg_a, f.leg_b, 1e-9);
}

}  // namespace
}  // namespace dartwright
