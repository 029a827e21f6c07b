// What must survive a new point and a new pivot, over generated pieces and darts.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/darts/repoint.hpp"
#include "support/evenly.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

struct Aimed {
    GeneratedPiece before;
    RepointRequest request;
    RepointResult result;
};

Aimed any_aimed() {
    Aimed out;
    out.before = any_piece(true, *evenly(1, 4));
    const Vector moved =
        real_between(0.001, 0.06) * out.before.size_mm * apply(turn_by(real_between(-pi, pi)), Vector{1, 0});
    out.request.piece = "piece";
    out.request.pivot = out.before.pivot + moved;
    out.request.span_mm = *rc::gen::element(0.0, 10.0, 40.0, 200.0);
    try {
        out.result = repoint(out.before.pattern, out.request);
    } catch (const Impossible& refused) {
        RC_TAG("refused");
        RC_DISCARD(refused.reason);
    }
    return out;
}

std::string only_dart(const GeneratedPiece& piece) {
    return piece.darts[any_index_of(piece.darts)];
}

RC_GTEST_PROP(RepointPivotKeeps, EveryRunEveryNotchAndEveryMouthsPlace, ()) {
    const Aimed a = any_aimed();
    const Piece& before = a.before.pattern.pieces[0];
    const Piece& after = a.result.pattern.pieces[0];
    expect_same_runs(before, after);
    RC_ASSERT(before.notches == after.notches);
    const std::vector<Run> runs = runs_of(after.outline);
    for (const Run& run : runs_of(before.outline)) {
        const std::vector<double> was = dart_distances(before.outline, run);
        const std::vector<double> is = dart_distances(after.outline, *find_run(runs, run.edge));
        RC_ASSERT(was.size() == is.size());
        for (std::size_t k = 0; k < was.size(); ++k) {
            RC_ASSERT(std::abs(was[k] - is[k]) <= length_rounding(run.length));
        }
    }
}

RC_GTEST_PROP(RepointPivotMakes, EqualLegsAPointOnTheCentreLineAndASmoothMouth, ()) {
    const Aimed a = any_aimed();
    const Piece& after = a.result.pattern.pieces[0];
    RC_ASSERT(a.result.account.darts.size() == a.before.darts.size());
    for (const RepointedDart& dart : a.result.account.darts) {
        const DartFigures f = figures_of(after.outline, dart_named(after, dart.dart));
        // A single dart's pivot within a pencil's point of the centre line is put on it.
        const double apart = a.before.darts.size() == 1 ? 0.1 : 0;
        RC_ASSERT(distance(f.pivot, *a.request.pivot) <= apart);
        RC_ASSERT(std::abs(f.pivot_leg_a - f.pivot_leg_b) <= rounding_mm);
        RC_ASSERT(std::abs(f.leg_a - f.leg_b) <= rounding_mm);
        RC_ASSERT(std::abs(f.off_bisector) <= rounding_mm);
        RC_ASSERT(std::abs(f.back_off - dart.before.back_off) <= rounding_mm);
        if (dart.span_mm[0] > 0) RC_ASSERT(*dart.mouth_after_deg <= 1e-6);
    }
}

RC_GTEST_PROP(RepointPivotMoves, NothingBeyondTheSpan, ()) {
    const Aimed a = any_aimed();
    RC_PRE(a.request.span_mm > 0);
    const Piece& before = a.before.pattern.pieces[0];
    const Piece& after = a.result.pattern.pieces[0];
    const std::vector<Run> runs = runs_of(after.outline);
    for (const Run& run : runs_of(before.outline)) {
        const std::vector<double> mouths = dart_distances(before.outline, run);
        const bool is_corner = !run.corner_darts_before.empty() || !run.corner_darts_after.empty();
        RC_ASSERT(!is_corner);
        for (int k = 0; k < 9; ++k) {
            const double at = run.length * (k + off_joints) / 9;
            const bool is_redrawn = std::any_of(mouths.begin(), mouths.end(), [&](double mouth) {
                return std::abs(mouth - at) < a.request.span_mm + 1e-3;
            });
            if (is_redrawn) continue;
            const Point was = place_on_run(before.outline, run, at).point;
            const Point is = place_on_run(after.outline, *find_run(runs, run.edge), at).point;
            RC_ASSERT(distance(was, is) <= place_tolerance(a.before));
        }
    }
}

// The dart angle is of the same cloth from another distance: mouth and leg give it.
RC_GTEST_PROP(RepointPivotSays, WhatEachDartBecame, ()) {
    const Aimed a = any_aimed();
    for (const RepointedDart& dart : a.result.account.darts) {
        const double by_mouth = 2 * std::asin(dart.after.intake / (2 * dart.after.pivot_leg_a));
        RC_ASSERT(std::abs(by_mouth - dart.after.angle_rad) <= 1e-9);
        RC_ASSERT(std::abs(dart.turned_rad) <= radians(45));
    }
}

RC_GTEST_PROP(RepointPivotOfACopy, TurnedOrReflectedIsTheCopy, ()) {
    const Aimed a = any_aimed();
    const Similarity s{real_between(-3, 3), 1, *rc::gen::arbitrary<bool>(), {real_between(-300, 300), 50}};
    Pattern copy = a.before.pattern;
    copy.pieces[0] = image(s, copy.pieces[0]);
    RepointRequest request = a.request;
    request.pivot = image(s, *a.request.pivot);
    const Piece expected = image(s, a.result.pattern.pieces[0]);
    const Piece found = repoint(copy, request).pattern.pieces[0];
    expect_same_points(samples_like(expected, expected, 7), samples_like(found, expected, 7),
                       10 * place_tolerance(a.before));
}

RC_GTEST_PROP(RepointBackOff, MovesThePointAlone, ()) {
    const GeneratedPiece piece = any_piece(true, *evenly(1, 4));
    const std::string name = only_dart(piece);
    const Piece& before = piece.pattern.pieces[0];
    const DartFigures f = figures_of(before.outline, dart_named(before, name));
    const double back_off = f.pivot_leg_a * real_between(0, 0.49);
    RepointRequest request{"piece", name, back_off, {}, {}, {}};
    const Pattern done = repoint(piece.pattern, request).pattern;
    const Piece& after = done.pieces[0];
    const DartFigures now = figures_of(after.outline, dart_named(after, name));
    RC_ASSERT(distance(now.point, f.pivot + back_off * bisector_of(f)) <= rounding_mm);
    RC_ASSERT(std::abs(now.leg_a - now.leg_b) <= rounding_mm);
    Piece expected = before;
    expected.outline.items[dart_named(before, name)].as_dart()->point = now.point;
    // Legs that were equal but for rounding are brought to their mean.
    expect_same_points(samples(expected, 5), samples(after, 5), place_tolerance(piece));
    request.back_off_mm.reset();
    request.point = now.point;
    const Piece again = repoint(done, request).pattern.pieces[0];
    const Point point = figures_of(again.outline, dart_named(again, name)).point;
    if (f.back_off > 0.1 && back_off > 0.1) RC_ASSERT(distance(point, now.point) <= rounding_mm);
}

}  // namespace
}  // namespace dartwright::testing
