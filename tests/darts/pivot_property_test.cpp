// What must survive a pivot, over generated pieces, darts and places.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/darts/pivot.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

PivotRequest request_to(const std::string& dart, const std::string& place) {
    PivotRequest request;
    request.piece = "piece";
    request.dart = dart;
    request.to = place;
    return request;
}

struct Moved {
    GeneratedPiece before;
    std::string dart;
    std::string place;
    double place_distance = 0;
    PivotRequest request;
    PivotResult result;
};

// A generated pivot that was possible. Refusals are discarded only for curved pieces, whose edges may hide a
// place; a piece of straight edges has to allow every place.
Moved any_pivot(bool may_curve, int darts, bool whole = true) {
    Moved out;
    out.before = any_piece(may_curve, darts);
    out.dart = out.before.darts[std::size_t(*evenly(0, darts))];
    out.place = any_place(out.before.pattern.pieces[0], &out.place_distance);
    RC_PRE(!out.place.empty());
    out.request = request_to(out.dart, out.place);
    if (!whole) out.request.part.share = real_between(0.1, 0.9);
    try {
        out.result = pivot(out.before.pattern, out.request);
    } catch (const Impossible&) {
        RC_PRE(may_curve);
        throw;
    }
    return out;
}

RC_GTEST_PROP(PivotKeeps, SewnLengthOfEveryRun, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4), *rc::gen::arbitrary<bool>());
    expect_same_runs(m.before.pattern.pieces[0], m.result.pattern.pieces[0]);
}

RC_GTEST_PROP(PivotKeeps, TotalAngleAboutThePivot, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4), *rc::gen::arbitrary<bool>());
    const double before = total_angle(m.before.pattern.pieces[0], m.before.pivot);
    const double after = total_angle(m.result.pattern.pieces[0], m.before.pivot);
    RC_ASSERT(std::abs(before - after) <= 1e-12);
}

RC_GTEST_PROP(PivotKeeps, ClothArea, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4), *rc::gen::arbitrary<bool>());
    const double before = cloth_area(m.before.pattern.pieces[0]);
    const double after = cloth_area(m.result.pattern.pieces[0]);
    RC_ASSERT(std::abs(before - after) <= 1e-11 * before);
}

RC_GTEST_PROP(PivotKeeps, NotchesAtTheirSewnDistances, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4));
    RC_ASSERT(m.before.pattern.pieces[0].notches == m.result.pattern.pieces[0].notches);
    expect_same_runs(m.before.pattern.pieces[0], m.result.pattern.pieces[0]);
}

// Every sampled point of the outline either stayed to the last bit of the held part or went with the one
// turn that the account names.
RC_GTEST_PROP(PivotTurns, EachPointByTheAccountsTurnOrNotAtAll, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4), *rc::gen::arbitrary<bool>());
    const Piece& before = m.before.pattern.pieces[0];
    const std::vector<Point> a = samples(before, 9);
    const std::vector<Point> b = samples_like(m.result.pattern.pieces[0], before, 9);
    const Motion turn = turn_about(m.before.pivot, turn_by(m.result.account.turn_rad));
    for (std::size_t i = 0; i < a.size(); ++i) {
        const bool stayed = distance(a[i], b[i]) <= place_tolerance(m.before);
        const bool went = distance(apply(turn, a[i]), b[i]) <= place_tolerance(m.before);
        RC_ASSERT(stayed || went);
    }
    RC_ASSERT(!m.result.account.turned.empty());
    RC_ASSERT(!m.result.account.held.empty());
    RC_ASSERT(std::abs(std::abs(m.result.account.turn_rad) - m.result.account.angle_rad) <= 1e-12);
}

RC_GTEST_PROP(PivotMakes, ADartOfThatAngleAtThePlaceWithEqualLegs, ()) {
    const Moved m = any_pivot(true, *evenly(1, 4), *rc::gen::arbitrary<bool>());
    const Piece& after = m.result.pattern.pieces[0];
    const std::size_t item = dart_named(after, m.result.account.new_dart);
    const DartFigures f = figures_of(after.outline, item);
    RC_ASSERT(std::abs(f.angle_rad - m.result.account.angle_rad) <= 1e-12);
    RC_ASSERT(std::abs(f.pivot_leg_a - f.pivot_leg_b) <= rounding_mm);
    RC_ASSERT(std::abs(f.leg_a - f.leg_b) <= rounding_mm);
    RC_ASSERT(std::abs(f.off_bisector) <= rounding_mm);
    const Piece& before = m.before.pattern.pieces[0];
    const DartFigures old = figures_of(before.outline, dart_named(before, m.dart));
    RC_ASSERT(std::abs(f.back_off - old.back_off) <= rounding_mm);
    const Place place = parse_place(m.place, runs_of(after.outline), "piece");
    const Run run = *find_run(runs_of(after.outline), place.edge);
    bool is_there = false;
    const std::vector<double> mouths = dart_distances(after.outline, run);
    for (std::size_t k = 0; k < mouths.size(); ++k) {
        is_there |=
            run.darts[k] == item && std::abs(mouths[k] - m.place_distance) <= length_rounding(run.length);
    }
    RC_ASSERT(is_there);
}

RC_GTEST_PROP(PivotThereAndBack, GivesTheSameShape, ()) {
    const Moved m = any_pivot(true, 1);
    const Piece& before = m.before.pattern.pieces[0];
    const std::string home = place_of_dart(before, m.dart);
    RC_ASSERT(!home.empty());
    const PivotResult back = pivot(m.result.pattern, request_to(m.dart, home));
    const Piece& after = back.pattern.pieces[0];
    expect_same_points(samples(before, 9), samples_like(after, before, 9), place_tolerance(m.before));
    const DartFigures a = figures_of(before.outline, dart_named(before, m.dart));
    const DartFigures b = figures_of(after.outline, dart_named(after, m.dart));
    // The mouth's own place was written as a distance, which is good to the arc length's 1e-9.
    expect_same_points({a.a, a.b, a.point, a.pivot}, {b.a, b.b, b.point, b.pivot}, place_tolerance(m.before));
    RC_ASSERT(before.marks.size() == after.marks.size());
    RC_ASSERT(distance(before.grain->from, after.grain->from) <= rounding_mm);
}

// With straight edges nothing but rounding is left: 1e-9 mm, at every size.
RC_GTEST_PROP(PivotThereAndBack, GivesEveryCornerBackToTheLastDigitsOnStraightEdges, ()) {
    const Moved m = any_pivot(false, 1);
    const Piece& before = m.before.pattern.pieces[0];
    const PivotResult back = pivot(m.result.pattern, request_to(m.dart, place_of_dart(before, m.dart)));
    const Piece& after = back.pattern.pieces[0];
    RC_ASSERT(before.outline.items.size() == after.outline.items.size());
    RC_ASSERT(distance(before.outline.start, after.outline.start) <= rounding_mm);
    for (std::size_t i = 0; i < before.outline.items.size(); ++i) {
        RC_ASSERT(distance(before.outline.items[i].to, after.outline.items[i].to) <= rounding_mm);
    }
    for (std::size_t i = 0; i < before.marks.size(); ++i) {
        const auto* line = std::get_if<LineMark>(&before.marks[i].what);
        if (!line) continue;
        expect_same_points(line->points, std::get<LineMark>(after.marks[i].what).points, rounding_mm);
    }
}

// The students' proof: open the whole angle along one common ray, and all variants coincide.
RC_GTEST_PROP(PivotProof, EveryVariantOpenedAtOnePlaceCoincides, ()) {
    const Moved m = any_pivot(true, 1);
    const std::string other = any_place(m.before.pattern.pieces[0]);
    const std::string common = any_place(m.before.pattern.pieces[0]);
    RC_PRE(!other.empty() && !common.empty());
    std::vector<Point> shapes[2];
    try {
        const PivotResult variant = pivot(m.before.pattern, request_to(m.dart, other));
        const Piece& order = m.before.pattern.pieces[0];
        shapes[0] =
            samples_like(pivot(m.result.pattern, request_to(m.dart, common)).pattern.pieces[0], order, 7);
        shapes[1] =
            samples_like(pivot(variant.pattern, request_to(m.dart, common)).pattern.pieces[0], order, 7);
    } catch (const Impossible&) {
        RC_DISCARD("a place beside the mouth or hidden by a curve");
    }
    const Motion fit = best_fit(shapes[0], shapes[1]);
    for (Point& p : shapes[0]) p = apply(fit, p);
    expect_same_points(shapes[0], shapes[1], 2 * place_tolerance(m.before));
}

RC_GTEST_PROP(PivotOfACopy, TurnedReflectedShiftedOrScaledIsTheCopyOfThePivot, ()) {
    const Moved m = any_pivot(true, *evenly(1, 3));
    Similarity s{real_between(-3, 3),
                 1,
                 *rc::gen::arbitrary<bool>(),
                 {real_between(-300, 300), real_between(-300, 300)}};
    if (*rc::gen::arbitrary<bool>()) s.scale = log_between(0.8, 3);
    Pattern copy = m.before.pattern;
    copy.pieces[0] = image(s, copy.pieces[0]);
    PivotRequest request = m.request;
    Place place = parse_place(m.place, runs_of(m.before.pattern.pieces[0].outline), "piece");
    place.distance.value *= s.scale;
    place.from = end_word_in_image(s, place.from);
    request.to = to_text(place);
    Piece expected;
    Piece found;
    try {
        found = pivot(copy, request).pattern.pieces[0];
    } catch (const Impossible&) {
        RC_DISCARD("a millimetre from a mouth is another place in a scaled copy");
    }
    expected = image(s, m.result.pattern.pieces[0]);
    const double tolerance = place_tolerance(m.before) * std::max(1.0, s.scale) * 4;
    // A reflected copy walks its runs the other way, so samples are taken by the same names and folded back.
    const std::vector<Point> a = samples_like(expected, expected, 9);
    const std::vector<Point> b = samples_like(found, expected, 9);
    expect_same_points(a, b, tolerance);
}

RC_GTEST_PROP(PivotRefuses, NothingOnAStarShapedPieceOfStraightEdges, ()) {
    const GeneratedPiece piece = any_piece(false, *evenly(1, 4));
    const std::string place = any_place(piece.pattern.pieces[0]);
    RC_PRE(!place.empty());
    pivot(piece.pattern, request_to(piece.darts[0], place));
}

RC_GTEST_PROP(PivotOfShares, AddUpToTheWhole, ()) {
    const Moved m = any_pivot(true, 1, false);
    PivotRequest rest = request_to(m.dart, any_place(m.result.pattern.pieces[0]));
    RC_PRE(!rest.to.empty());
    try {
        const Piece after = pivot(m.result.pattern, rest).pattern.pieces[0];
        RC_ASSERT(std::abs(total_angle(after, m.before.pivot) -
                           total_angle(m.before.pattern.pieces[0], m.before.pivot)) <= 1e-12);
        expect_same_runs(m.before.pattern.pieces[0], after);
    } catch (const Impossible&) {
        RC_DISCARD("the place is beside the new mouth");
    }
}

}  // namespace
}  // namespace dartwright::testing
