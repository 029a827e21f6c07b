// Comparing patterns that have lost nothing, and patterns that have lost something known, over generated
// pieces and chains of operations.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/comparing/compare.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

struct Chain {
    Pattern before;
    Pattern after;
    double size_mm = 0;
};

Chain any_moved() {
    const GeneratedPiece piece = any_piece(true, *evenly(1, 4));
    return {piece.pattern, any_chain(piece.pattern, *evenly(0, 5)), piece.size_mm};
}

void say_losses(const Comparison& comparison) {
    for (const Loss& loss : comparison.losses) RC_LOG() << loss.message << "\n";
}

// Nothing is lost, and each figure that must stay is the same to rounding.
void expect_kept(const Comparison& comparison, double size_mm) {
    say_losses(comparison);
    RC_ASSERT(comparison.is_kept());
    const double place_mm = 20 * (4e-9 * size_mm + rounding_mm);
    for (const ComparedPiece& piece : comparison.pieces) {
        RC_ASSERT(std::abs(*piece.area_mm2.difference()) <= 1e-9 * *piece.area_mm2.before);
        for (const ComparedRun& run : piece.runs)
            RC_ASSERT(std::abs(*run.sewn_mm.difference()) <= length_rounding(*run.sewn_mm.before));
        for (const ComparedPivot& pivot : piece.pivots) {
            RC_ASSERT(std::abs(*pivot.angle_rad.difference()) <= 1e-9);
            RC_ASSERT(*pivot.strays_mm <= place_mm);
        }
        for (const ComparedPart& part : piece.parts) RC_ASSERT(part.strays_mm <= place_mm);
    }
}

RC_GTEST_PROP(CompareKeeps, APatternAndItself, ()) {
    const Chain chain = any_moved();
    const Comparison comparison = compare(chain.after, chain.after);
    expect_kept(comparison, chain.size_mm);
    RC_ASSERT(comparison.notes.empty());
    for (const ComparedDart& dart : comparison.pieces[0].darts) RC_ASSERT(dart.change == DartChange::kept);
    RC_ASSERT(comparison.pieces[0].outline->at_most_mm <= 1e-9);
}

RC_GTEST_PROP(CompareKeeps, WhatDartsWereMovedIn, ()) {
    const Chain chain = any_moved();
    expect_kept(compare(chain.before, chain.after), chain.size_mm);
    expect_kept(compare(chain.after, chain.before), chain.size_mm);
}

Similarity any_lie() {
    Similarity lie;
    lie.angle = real_between(-pi, pi);
    lie.is_reflected = *rc::gen::arbitrary<bool>();
    lie.shift = {real_between(-900, 900), real_between(-900, 900)};
    return lie;
}

RC_GTEST_PROP(CompareKeeps, APieceThatLiesAnotherWayAndSaysSo, ()) {
    Chain chain = any_moved();
    const Similarity lie = any_lie();
    chain.after.pieces[0] = image(lie, chain.after.pieces[0]);
    const Comparison comparison = compare(chain.before, chain.after);
    expect_kept(comparison, chain.size_mm + 1000);
    RC_ASSERT(comparison.pieces[0].is_mirrored == lie.is_reflected);
}

RC_GTEST_PROP(CompareKeeps, AFileInInches, ()) {
    const Chain chain = any_moved();
    Pattern inches = chain.after;
    inches.unit = Unit::inch;
    expect_kept(compare(chain.before, read_pattern(write_pattern(inches), "inches.json")), chain.size_mm);
}

// A dart that was moved is where the operation put it.
RC_GTEST_PROP(CompareSays, WhereADartWasMoved, ()) {
    const GeneratedPiece piece = any_piece(true, 1);
    double at = 0;
    const std::string place = any_place(piece.pattern.pieces[0], &at);
    RC_PRE(!place.empty());
    Pattern moved;
    try {
        moved = pivot(piece.pattern, {"piece", piece.darts[0], place, {}, {}, "", "", "", ""}).pattern;
    } catch (const Impossible&) {
        RC_DISCARD("a place hidden by a curve, or beside the mouth");
    }
    const ComparedPiece compared = compare(piece.pattern, moved).pieces[0];
    RC_ASSERT(compared.darts.size() == 1u);
    RC_ASSERT(compared.darts[0].change == DartChange::moved);
    const DartSeen& after = *compared.darts[0].after;
    RC_ASSERT(place.find(after.edge + "@") == 0u);
    const auto runs = runs_of(piece.pattern.pieces[0].outline);
    RC_ASSERT(std::abs(after.share * find_run(runs, after.edge)->length - at) <= 1e-5);
    RC_ASSERT(std::abs(after.angle_rad - compared.darts[0].before->angle_rad) <= 1e-12);
}

std::vector<std::string> losses_of_kind(const Comparison& comparison, const std::string& what) {
    std::vector<std::string> edges;
    for (const Loss& loss : comparison.losses) {
        if (loss.what == what) edges.push_back(loss.edge);
    }
    return edges;
}

RC_GTEST_PROP(CompareFinds, ANotchMovedByItsAmountFromBothEnds, ()) {
    Chain chain = any_moved();
    const double by = real_between(1.01, 8);
    Notch& notch = chain.after.pieces[0].notches[any_index_of(chain.after.pieces[0].notches)];
    notch.at += by;
    const Comparison comparison = compare(chain.before, chain.after);
    RC_ASSERT(comparison.losses.size() == 2u);
    for (const Loss& loss : comparison.losses) {
        RC_ASSERT(loss.what == "notch-place");
        RC_ASSERT(loss.edge == notch.edge);
        RC_ASSERT(std::abs(std::abs(*loss.amount.difference()) - by) <= 1e-6);
    }
}

RC_GTEST_PROP(CompareFinds, ANotchThatIsGone, ()) {
    Chain chain = any_moved();
    std::vector<Notch>& notches = chain.after.pieces[0].notches;
    const auto gone = notches.begin() + *evenly(0, int(notches.size()));
    const std::string edge = gone->edge;
    notches.erase(gone);
    const Comparison comparison = compare(chain.before, chain.after);
    RC_ASSERT(comparison.losses.size() == 1u);
    RC_ASSERT(losses_of_kind(comparison, "notch-missing") == std::vector<std::string>{edge});
}

RC_GTEST_PROP(CompareFinds, AnEdgeThatHasAnotherName, ()) {
    Chain chain = any_moved();
    const auto runs = runs_of(chain.after.pieces[0].outline);
    const std::string gone = runs[any_index_of(runs)].edge;
    for (OutlineItem& item : chain.after.pieces[0].outline.items) {
        if (EdgeItem* edge = item.as_edge(); edge && edge->edge == gone) edge->edge = "stranger";
    }
    for (Notch& notch : chain.after.pieces[0].notches) {
        if (notch.edge == gone) notch.edge = "stranger";
        if (notch.from == gone) notch.from = "stranger";
    }
    if (auto& grain = chain.after.pieces[0].grain; grain && grain->along == gone) grain->along = "stranger";
    const Comparison comparison = compare(chain.before, chain.after);
    RC_ASSERT(losses_of_kind(comparison, "run-missing") == std::vector<std::string>{gone});
    RC_ASSERT(losses_of_kind(comparison, "run-length").empty());
    RC_ASSERT(losses_of_kind(comparison, "part-shape").empty());
}

// Fullness over the whole of an edge shortens it as sewn, by itself, and changes no shape.
RC_GTEST_PROP(CompareFinds, ALengthLostByItsAmount, ()) {
    Chain chain = any_moved();
    const auto runs = runs_of(chain.after.pieces[0].outline);
    const Run& run = runs[any_index_of(runs)];
    const double by = real_between(1.01, 3);
    RC_PRE(run.length > 4 * by);
    for (const std::size_t item : run.items) {
        const double share = length_of_item(chain.after.pieces[0].outline, item) / run.length;
        chain.after.pieces[0].outline.items[item].as_edge()->fullness = by * share;
    }
    const Comparison comparison = compare(chain.before, chain.after);
    RC_ASSERT(losses_of_kind(comparison, "run-length") == std::vector<std::string>{run.edge});
    RC_ASSERT(losses_of_kind(comparison, "part-shape").empty());
    RC_ASSERT(losses_of_kind(comparison, "cloth-area").empty());
    RC_ASSERT(std::abs(*comparison.losses[0].amount.difference() + by) <= length_rounding(run.length));
}

// A corner that is pulled out shows in the shape of the part that has it.
RC_GTEST_PROP(CompareFinds, APartThatWasRedrawn, ()) {
    const GeneratedPiece piece = any_piece(false, *evenly(1, 3));
    Pattern redrawn = piece.pattern;
    const auto runs = runs_of(redrawn.pieces[0].outline);
    const Run& run = runs[any_index_of(runs)];
    Point& corner = redrawn.pieces[0].outline.items[run.items.back()].to;
    corner = corner + 0.05 * (corner - piece.pivot);
    const Comparison comparison = compare(piece.pattern, redrawn);
    RC_ASSERT(!losses_of_kind(comparison, "part-shape").empty());
    for (const Loss& loss : comparison.losses) RC_ASSERT(loss.what != "pivot-angle");
}

}  // namespace
}  // namespace dartwright::testing
