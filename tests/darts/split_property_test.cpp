// What must survive splits, merges and chains of them, over generated pieces, darts and places.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/split.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

struct Divided {
    GeneratedPiece before;
    SplitRequest request;
    SplitResult result;
};

std::vector<double> any_shares(int count, bool is_all) {
    std::vector<double> shares;
    double sum = 0;
    for (int i = 0; i < count; ++i) {
        shares.push_back(real_between(0.2, 1));
        sum += shares.back();
    }
    const double whole = is_all ? 1 : real_between(0.3, 0.9);
    for (double& share : shares) share *= whole / sum;
    return shares;
}

SplitRequest any_split(const GeneratedPiece& piece, int count, bool is_all) {
    SplitRequest request;
    request.piece = "piece";
    request.dart = piece.darts[0];
    const std::vector<double> shares = any_shares(count, is_all);
    for (int i = 0; i < count; ++i) {
        const std::string place = any_place(piece.pattern.pieces[0]);
        RC_PRE(!place.empty());
        request.places.push_back(
            {place, shares[std::size_t(i)], std::string("new ") + std::to_string(i), ""});
    }
    return request;
}

Divided any_divided(bool is_all, int darts = 1) {
    Divided out;
    out.before = any_piece(true, darts);
    out.request = any_split(out.before, *evenly(1, 4), is_all);
    try {
        out.result = split(out.before.pattern, out.request);
    } catch (const Impossible&) {
        RC_DISCARD("a place hidden by a curve, or beside another");
    }
    return out;
}

RC_GTEST_PROP(SplitKeeps, LengthsAnglesAreaAndNotches, ()) {
    const Divided d = any_divided(*rc::gen::arbitrary<bool>(), *evenly(1, 4));
    const Piece& before = d.before.pattern.pieces[0];
    const Piece& after = d.result.pattern.pieces[0];
    expect_same_runs(before, after);
    RC_ASSERT(std::abs(total_angle(before, d.before.pivot) - total_angle(after, d.before.pivot)) <= 1e-12);
    RC_ASSERT(std::abs(cloth_area(before) - cloth_area(after)) <= 1e-11 * cloth_area(before));
    RC_ASSERT(before.notches == after.notches);
}

RC_GTEST_PROP(SplitMakes, EachDartOfItsShareWithTheOldBackOff, ()) {
    const Divided d = any_divided(*rc::gen::arbitrary<bool>());
    const Piece& before = d.before.pattern.pieces[0];
    const Piece& after = d.result.pattern.pieces[0];
    const DartFigures old = figures_of(before.outline, dart_named(before, d.request.dart));
    double opened = 0;
    for (const SplitPlace& place : d.request.places) {
        const DartFigures f = figures_of(after.outline, dart_named(after, place.name));
        RC_ASSERT(std::abs(f.angle_rad - place.share * old.angle_rad) <= 1e-11);
        RC_ASSERT(std::abs(f.leg_a - f.leg_b) <= rounding_mm);
        RC_ASSERT(std::abs(f.back_off - old.back_off) <= rounding_mm);
        opened += f.angle_rad;
    }
    RC_ASSERT(std::abs(opened + d.result.account.angle_left_rad - old.angle_rad) <= 1e-11);
    RC_ASSERT((d.result.account.angle_left_rad == 0) == !find_dart(after, d.request.dart).has_value());
}

RC_GTEST_PROP(SplitInAnyOrder, IsTheSameShape, ()) {
    const Divided d = any_divided(*rc::gen::arbitrary<bool>());
    SplitRequest other = d.request;
    std::reverse(other.places.begin(), other.places.end());
    const SplitResult reversed_order = split(d.before.pattern, other);
    expect_same_shape(d.result.pattern.pieces[0], reversed_order.pattern.pieces[0], 7,
                      4 * place_tolerance(d.before));
}

Pattern merged_into(Pattern pattern, const std::string& into) {
    for (bool is_done = false; !is_done;) {
        is_done = true;
        for (const OutlineItem& item : pattern.pieces[0].outline.items) {
            const DartItem* dart = item.as_dart();
            if (!dart || dart->name == into) continue;
            pattern = merge(pattern, {"piece", dart->name, into, "", ""}).pattern;
            is_done = false;
            break;
        }
    }
    return pattern;
}

// Splitting and gathering all into one of the new darts is a pivot to its place.
RC_GTEST_PROP(SplitAndMerge, AreOnePivot, ()) {
    const Divided d = any_divided(true);
    const SplitPlace& place = d.request.places[0];
    PivotRequest whole;
    whole.piece = "piece";
    whole.dart = d.request.dart;
    whole.to = place.to;
    const Piece direct = pivot(d.before.pattern, whole).pattern.pieces[0];
    Piece round;
    try {
        round = merged_into(d.result.pattern, place.name).pieces[0];
    } catch (const Impossible&) {
        RC_DISCARD("the grain was carried into a dart's wedge, so that nothing says which part stays");
    }
    expect_same_shape(direct, round, 7, 4 * place_tolerance(d.before));
}

RC_GTEST_PROP(MergeKeeps, LengthsAnglesAreaAndNotches, ()) {
    const GeneratedPiece piece = any_piece(true, *evenly(2, 4));
    const Piece& before = piece.pattern.pieces[0];
    const MergeResult result = merge(piece.pattern, {"piece", piece.darts[0], piece.darts[1], "", ""});
    const Piece& after = result.pattern.pieces[0];
    expect_same_runs(before, after);
    RC_ASSERT(std::abs(total_angle(before, piece.pivot) - total_angle(after, piece.pivot)) <= 1e-12);
    RC_ASSERT(std::abs(cloth_area(before) - cloth_area(after)) <= 1e-11 * cloth_area(before));
    RC_ASSERT(before.notches == after.notches);
    RC_ASSERT(!find_dart(after, piece.darts[0]));
    const DartFigures left = figures_of(after.outline, dart_named(after, piece.darts[1]));
    RC_ASSERT(std::abs(left.angle_rad - result.account.angle_rad - result.account.angle_with_rad) <= 1e-12);
    RC_ASSERT(std::abs(left.leg_a - left.leg_b) <= rounding_mm);
}

// Any chain of operations keeps everything and can be undone: all gathered into one dart and moved home, the
// piece is what it was.
RC_GTEST_PROP(AnyChain, KeepsEverythingAndComesHome, ()) {
    const GeneratedPiece piece = any_piece(true, 1);
    const Piece& before = piece.pattern.pieces[0];
    Pattern pattern = any_chain(piece.pattern, 8);
    RC_PRE(!pattern.made.empty());
    const Piece& after = pattern.pieces[0];
    expect_same_runs(before, after);
    RC_ASSERT(std::abs(total_angle(before, piece.pivot) - total_angle(after, piece.pivot)) <= 1e-11);
    RC_ASSERT(std::abs(cloth_area(before) - cloth_area(after)) <= 1e-10 * cloth_area(before));
    RC_ASSERT(before.notches == after.notches);
    Pattern home;
    try {
        const std::string last = any_dart(after);
        PivotRequest request{"piece", last, place_of_dart(before, piece.darts[0]), {}, {}, "", "home",
                             "",      ""};
        home = pivot(merged_into(pattern, last), request).pattern;
    } catch (const Impossible&) {
        RC_DISCARD("the home of the dart is beside the mouth, or hidden by a curve");
    }
    expect_same_shape(before, home.pieces[0], 7, 20 * place_tolerance(piece));
}

}  // namespace
}  // namespace dartwright::testing
