// Darts trued: by example, and over generated pieces.

#include "dartwright/darts/true_dart.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "support/evenly.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

Pattern with_long_leg(double longer_mm) {
    Pattern pattern = plain();
    Outline& outline = pattern.pieces[0].outline;
    const std::size_t dart = *find_dart(pattern.pieces[0], "waist dart");
    const DartFigures f = figures_of(outline, dart);
    outline.items[dart].to = f.b + longer_mm * unit(f.b - f.pivot);
    return pattern;
}

TrueDartRequest request_for(TrueLegs legs = TrueLegs::mean, double span_mm = true_span_mm) {
    return {"front", "waist dart", legs, span_mm};
}

TEST(TrueDart, GivesBothLegsTheLengthAskedFor) {
    const double leg = std::hypot(20, 200);
    const Pattern pattern = with_long_leg(3);
    const auto legs_with = [&](TrueLegs legs) {
        return true_dart(pattern, request_for(legs)).account.legs_after_mm;
    };
    for (const double found : legs_with(TrueLegs::mean)) EXPECT_NEAR(found, leg + 1.5, 1e-9);
    for (const double found : legs_with(TrueLegs::long_)) EXPECT_NEAR(found, leg + 3, 1e-9);
    for (const double found : legs_with(TrueLegs::short_)) EXPECT_NEAR(found, leg, 1e-9);
}

TEST(TrueDart, LeavesNoFindingOfTheDart) {
    Pattern pattern = with_long_leg(3);
    pattern.pieces[0].outline.items[1].as_dart()->point = {103, 178};
    const auto of_dart = [](const Pattern& each) {
        std::vector<std::string> out;
        for (const Finding& finding : check(each).findings) {
            if (finding.dart == "waist dart") out.push_back(finding.check);
        }
        return out;
    };
    EXPECT_EQ(of_dart(pattern), (std::vector<std::string>{"dart-legs", "dart-mouth"}));
    EXPECT_EQ(of_dart(true_dart(pattern, request_for()).pattern), std::vector<std::string>{});
}

TEST(TrueDart, OfAStraightWaistDropsItsEndsAndBlends) {
    // Legs that end on a straight waist close to a V; their ends are dropped and blended
    // (dresspatternmaking.com, curving the waist). The corner of the V is the sewn angle.
    const TrueDartResult trued = true_dart(plain(), request_for(TrueLegs::drawn));
    EXPECT_NEAR(trued.account.mouth_before_deg, degrees(2 * std::atan(20.0 / 180)), 1e-9);
    EXPECT_NEAR(trued.account.mouth_after_deg, 0, 1e-9);
    EXPECT_EQ(trued.account.span_mm, (std::array<double, 2>{40, 40}));
    EXPECT_GT(trued.account.legs_after_mm[0], trued.account.legs_before_mm[0] + 1);
    EXPECT_NEAR(trued.account.legs_after_mm[0], trued.account.legs_after_mm[1], 1e-9);
    const Outline& outline = trued.pattern.pieces[0].outline;
    EXPECT_LT(outline.items[1].to.y, -1);
}

// Half way along the line over a symmetrical V the height over its corner is known: a cubic with handles of a
// third of the chord c, both at the angle a to it, rises to 3/4 of tan(a) c / 3 at its middle.
TEST(TrueDart, DropsTheEndsByAsMuchAsTheFairLineLiesOutside) {
    const double half_corner = std::atan(20.0 / 180);
    const TrueDartResult trued = true_dart(plain(), request_for(TrueLegs::drawn));
    const double leg_to_point = figures(trued.pattern, "waist dart").leg_a;
    const double chord = 2 * 40 * std::cos(half_corner);
    const double corner_over_chord = 40 * std::sin(half_corner);
    const double rise = 0.75 * std::sin(half_corner) * chord / 3;
    // The plain dart's point is 20 mm short of its pivot, so the fold moves a little as the legs grow.
    EXPECT_NEAR(leg_to_point - std::hypot(20, 180), corner_over_chord - rise, 0.2);
}

TEST(TrueDart, WithoutASpanOnlyBringsTheEdgeToTheLegs) {
    const TrueDartResult trued = true_dart(with_long_leg(3), request_for(TrueLegs::short_, 0));
    EXPECT_EQ(trued.account.span_mm, (std::array<double, 2>{0, 0}));
    EXPECT_GT(trued.account.mouth_after_deg, 1);
    EXPECT_EQ(trued.pattern.pieces[0].outline.items.size(), plain().pieces[0].outline.items.size());
}

TEST(TrueDart, KeepsToTheEdgeWhereItIsShorterThanTheSpan) {
    const TrueDartResult trued = true_dart(plain(), request_for(TrueLegs::mean, 1000));
    EXPECT_NEAR(trued.account.span_mm[0], 80, 1e-9);
    EXPECT_NEAR(trued.account.span_mm[1], 80, 1e-9);
    EXPECT_NEAR(trued.account.mouth_after_deg, 0, 1e-9);
}

TEST(TrueDart, InACornerTruesTheLegsOnly) {
    Pattern pattern = with_long_leg(3);
    pattern.pieces[0].outline.items[2].as_edge()->edge = "side waist";
    for (Notch& notch : pattern.pieces[0].notches)
        if (notch.from == "waist") notch.from = "side waist";
    const TrueDartResult trued = true_dart(pattern, request_for());
    EXPECT_NEAR(trued.account.legs_after_mm[0], trued.account.legs_after_mm[1], 1e-9);
    ASSERT_FALSE(trued.account.notes.empty());
    EXPECT_TRUE(contains(trued.account.notes.back(), "stands in a corner"));
}

TEST(TrueDart, PutsAPointBeyondThePivotOnIt) {
    Pattern pattern = plain();
    pattern.pieces[0].outline.items[1].as_dart()->point = {100, 210};
    const DartFigures f = figures(true_dart(pattern, request_for()).pattern, "waist dart");
    EXPECT_NEAR(distance(f.point, {100, 200}), 0, 1e-9);
}

TEST(TrueDart, BacksOffAsFarAsTheDartAsks) {
    Pattern pattern = with_long_leg(1);
    pattern.pieces[0].outline.items[1].as_dart()->back_off = 30;
    EXPECT_NEAR(figures(true_dart(pattern, request_for()).pattern, "waist dart").back_off, 30, 1e-9);
}

TEST(TrueDart, SaysWhichSeamAChangedEdgeIsIn) {
    Pattern pattern = with_long_leg(3);
    pattern.seams.push_back(
        {"waist seam",
         {SeamSide{{"front", "waist", "side", false}}, SeamSide{{"front", "side", "armhole", false}}},
         {},
         {}});
    const TrueDartResult trued = true_dart(pattern, request_for());
    ASSERT_EQ(trued.account.notes.size(), 1u);
    EXPECT_TRUE(contains(trued.account.notes[0], "\"waist\" in the seam \"waist seam\" is"));
}

TEST(TrueDart, RefusesWhatItCannotDo) {
    EXPECT_THROW(true_dart(plain(), request_for(TrueLegs::mean, -1)), BadWords);
    EXPECT_THROW(true_dart(plain(), request_for(TrueLegs::mean, std::nan(""))), BadWords);
    EXPECT_THROW(true_dart(plain(), {"front", "no dart", TrueLegs::mean, 40}), UnknownName);
    Pattern shut = plain();
    shut.pieces[0].outline.items[1].to = {80, 0};
    EXPECT_THROW(true_dart(shut, request_for()), Impossible);
}

}  // namespace

namespace testing {
namespace {

struct Trued {
    GeneratedPiece before;
    TrueDartRequest request;
    TrueDartResult result;
};

// A generated piece with one leg longer than the other, and the dart trued.
Trued any_trued() {
    Trued out;
    out.before = any_piece(true, *testing::evenly(1, 3));
    Outline& outline = out.before.pattern.pieces[0].outline;
    const std::size_t dart = *find_dart(out.before.pattern.pieces[0], out.before.darts[0]);
    const DartFigures f = figures_of(outline, dart);
    const Point longer = f.a + real_between(-3, 3) * unit(f.a - f.pivot);
    outline.items[(dart + outline.items.size() - 1) % outline.items.size()].to = longer;
    const TrueLegs legs =
        *rc::gen::element(TrueLegs::drawn, TrueLegs::mean, TrueLegs::long_, TrueLegs::short_);
    out.request = {"piece", out.before.darts[0], legs, real_between(1, 60)};
    try {
        out.result = true_dart(out.before.pattern, out.request);
    } catch (const Impossible&) {
        RC_DISCARD("a mouth in so sharp a corner that the edge would cross its own dart");
    }
    return out;
}

RC_GTEST_PROP(TrueDartMakes, EqualLegsAPointOnTheCentreLineAndASmoothMouth, ()) {
    const Trued t = any_trued();
    const Piece& after = t.result.pattern.pieces[0];
    const DartFigures f = figures_of(after.outline, dart_named(after, t.request.dart));
    RC_ASSERT(std::abs(f.leg_a - f.leg_b) <= rounding_mm);
    RC_ASSERT(std::abs(f.pivot_leg_a - f.pivot_leg_b) <= rounding_mm);
    RC_ASSERT(std::abs(f.off_bisector) <= rounding_mm);
    RC_ASSERT(t.result.account.mouth_after_deg <= 1e-6);
}

RC_GTEST_PROP(TrueDartKeeps, TheAngleAndEveryOtherRun, ()) {
    const Trued t = any_trued();
    const Piece& before = t.before.pattern.pieces[0];
    const Piece& after = t.result.pattern.pieces[0];
    const DartFigures a = figures_of(before.outline, dart_named(before, t.request.dart));
    const DartFigures b = figures_of(after.outline, dart_named(after, t.request.dart));
    RC_ASSERT(std::abs(a.angle_rad - b.angle_rad) <= 1e-11);
    RC_ASSERT(std::abs(a.back_off - b.back_off) <= rounding_mm);
    const std::vector<Run> runs = runs_of(after.outline);
    for (const RunChange& change : t.result.account.runs) {
        const Run& run = *find_run(runs, change.edge);
        RC_ASSERT(std::abs(run.length - change.after_mm) <= length_rounding(run.length));
        const bool has_dart = std::any_of(run.darts.begin(), run.darts.end(), [&](std::size_t item) {
            return after.outline.items[item].as_dart()->name == t.request.dart;
        });
        if (!has_dart) RC_ASSERT(std::abs(change.before_mm - change.after_mm) <= length_rounding(run.length));
    }
}

RC_GTEST_PROP(TrueDartTwice, IsOnce, ()) {
    const Trued t = any_trued();
    const TrueDartResult again = true_dart(t.result.pattern, t.request);
    expect_same_points(samples(t.result.pattern.pieces[0], 7), samples(again.pattern.pieces[0], 7), 1e-6);
}

RC_GTEST_PROP(TrueDartOfACopy, TurnedOrReflectedIsTheCopy, ()) {
    const Trued t = any_trued();
    const Similarity s{real_between(-3, 3), 1, *rc::gen::arbitrary<bool>(), {real_between(-300, 300), 50}};
    Pattern copy = t.before.pattern;
    copy.pieces[0] = image(s, copy.pieces[0]);
    const Piece expected = image(s, t.result.pattern.pieces[0]);
    const Piece found = true_dart(copy, t.request).pattern.pieces[0];
    expect_same_points(samples_like(expected, expected, 7), samples_like(found, expected, 7),
                       10 * place_tolerance(t.before));
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
