// A pattern and the same one written otherwise: everything is kept, and no change is told.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "dartwright/comparing/compare.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
#include "support/full_pattern.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_seams.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright::testing {
namespace {

template <typename Each>
void turn_order(std::vector<Each>& list) {
    if (list.size() < 2) return;
    std::rotate(list.begin(), list.begin() + *testing::evenly(0, int(list.size())), list.end());
    if (*rc::gen::arbitrary<bool>()) std::reverse(list.begin(), list.end());
}

Pattern in_other_order(Pattern pattern) {
    turn_order(pattern.pieces);
    turn_order(pattern.seams);
    for (Piece& piece : pattern.pieces) {
        turn_order(piece.notches);
        turn_order(piece.marks);
        turn_order(piece.double_darts);
        turn_order(piece.allowance);
        for (auto& [edge, allowance] : piece.allowance)
            if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
                turn_order(*stretches);
    }
    return pattern;
}

std::string other_end(const std::string& end) {
    return end == "start" ? "end" : end == "end" ? "start" : end;
}

std::map<std::string, CornerIs> other_ends(const std::map<std::string, CornerIs>& ends) {
    std::map<std::string, CornerIs> out;
    for (const auto& [end, is] : ends) out.emplace(other_end(end), is);
    return out;
}

// As it would be written clockwise: the reserved words for ends go by the direction of writing.
Pattern clockwise(Pattern pattern) {
    for (Piece& piece : pattern.pieces) {
        piece.outline = reversed(piece.outline);
        for (Notch& notch : piece.notches) notch.from = other_end(notch.from);
        for (auto& [edge, allowance] : piece.allowance)
            if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
                for (AllowanceStretch& each : *stretches) each.from = other_end(each.from);
        if (piece.cut) piece.cut->ends = other_ends(piece.cut->ends);
    }
    for (Seam& seam : pattern.seams) {
        for (SeamSide& side : seam.joins)
            for (auto& join : side) join.from = other_end(join.from);
        seam.ends = other_ends(seam.ends);
    }
    return pattern;
}

// As it is read from a file that is drawn clockwise, or measured in another unit.
Pattern through_a_file(Pattern pattern) {
    if (*rc::gen::arbitrary<bool>()) pattern = clockwise(pattern);
    pattern.unit = *rc::gen::elementOf(std::vector<Unit>{Unit::mm, Unit::cm, Unit::inch});
    return read_pattern(write_pattern(pattern), "otherwise.json");
}

// With gathers on an edge, stretches of allowance, and several double darts.
Pattern any_full_pattern() {
    const GeneratedPiece generated = any_piece(true, *testing::evenly(1, 4));
    Pattern pattern = full_pattern(generated);
    // An edge all round begins with the file's first item, and its notches are measured from there: begun
    // elsewhere it is another.
    pattern.pieces.pop_back();
    for (Piece& piece : pattern.pieces) {
        const std::vector<Run> runs = runs_of(piece.outline);
        const Run& gathered = runs[std::size_t(*testing::evenly(0, int(runs.size())))];
        if (*rc::gen::arbitrary<bool>()) {
            EdgeItem& item = *piece.outline.items[gathered.items.front()].as_edge();
            item.fullness = length_of_item(piece.outline, gathered.items.front()) * real_between(0.01, 0.6);
        }
        // Its distances are sewn ones, which the fullness shortens.
        const std::vector<Run> sewn = runs_of(piece.outline);
        std::erase_if(piece.notches,
                      [&](const Notch& notch) { return notch.at > find_run(sewn, notch.edge)->length; });
        const Run& wide = sewn.back();
        piece.allowance.push_back(
            {wide.edge, Allowance{std::vector<AllowanceStretch>{
                            {name_of_end(wide, RunEnd::start), 0, wide.length / 3, 10},
                            {name_of_end(wide, RunEnd::start), wide.length / 3, wide.length, 15}}}});
        DoubleDart second = piece.double_darts[0];
        second.name = "second";
        const Vector aside{generated.size_mm / 12, 0};
        for (Point* p : {&second.from, &second.to, &second.widest[0], &second.widest[1]}) *p = *p + aside;
        piece.double_darts.push_back(second);
    }
    return pattern;
}

Pattern any_pattern() {
    switch (*testing::evenly(0, 3)) {
        case 0:
            return any_seam().pattern;
        case 1: {
            const GeneratedPiece piece = any_piece(true, *testing::evenly(1, 4));
            return any_chain(piece.pattern, *testing::evenly(0, 5));
        }
        default:
            return any_full_pattern();
    }
}

// Places move by the rounding of items put in, 1e-7 mm, and of inches, one part in 1e16.
constexpr double moved_mm = 1e-5;

void expect_unchanged(const Pattern& before, const Pattern& after) {
    const Comparison comparison = compare(before, after);
    for (const Loss& loss : comparison.losses) RC_LOG() << "loss: " << loss.message << "\n";
    for (const Loss& change : comparison.changes) RC_LOG() << "change: " << change.message << "\n";
    for (const std::string& note : comparison.notes) RC_LOG() << "note: " << note << "\n";
    RC_ASSERT(comparison.is_unchanged());
    RC_ASSERT(comparison.notes.empty());
    RC_ASSERT(comparison.pieces.size() == before.pieces.size());
    for (const ComparedPiece& piece : comparison.pieces) {
        RC_ASSERT(piece.separated_into.empty());
        RC_ASSERT(!piece.is_mirrored);
        RC_ASSERT(std::abs(piece.turned_rad) <= 1e-6);
        RC_ASSERT(std::abs(*piece.area_mm2.difference()) <= 1e-9 * *piece.area_mm2.before + 2e-3);
        for (const ComparedRun& run : piece.runs) RC_ASSERT(std::abs(*run.sewn_mm.difference()) <= moved_mm);
        for (const ComparedPivot& pivot : piece.pivots) {
            RC_ASSERT(std::abs(*pivot.angle_rad.difference()) <= 1e-6);
            RC_ASSERT(*pivot.strays_mm <= moved_mm);
        }
        for (const ComparedNotch& notch : piece.notches)
            for (const BeforeAfter& at : notch.at_mm) RC_ASSERT(std::abs(*at.difference()) <= moved_mm);
        for (const ComparedPart& part : piece.parts) RC_ASSERT(part.strays_mm <= moved_mm);
        for (const ComparedDart& dart : piece.darts) RC_ASSERT(dart.change == DartChange::kept);
    }
    for (const ComparedSeam& seam : comparison.seams)
        RC_ASSERT(std::abs(*seam.difference_mm.difference()) <= moved_mm);
}

RC_GTEST_PROP(CompareKeeps, APatternWrittenOtherwise, ()) {
    const Pattern pattern = any_pattern();
    const Pattern otherwise = through_a_file(in_other_order(written_otherwise(pattern)));
    expect_unchanged(pattern, otherwise);
    expect_unchanged(otherwise, pattern);
}

// Both ways of writing it at once: one's edges divided where the other's are whole.
RC_GTEST_PROP(CompareKeeps, APatternWrittenInTwoOtherWays, ()) {
    const Pattern pattern = any_pattern();
    expect_unchanged(through_a_file(in_other_order(written_otherwise(pattern))), written_otherwise(pattern));
}

}  // namespace
}  // namespace dartwright::testing
