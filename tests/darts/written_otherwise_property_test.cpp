// Operations move the same cloth to the same place however the outline is written.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "support/evenly.hpp"
#include "support/generated_half.hpp"
#include "support/shape_laws.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright {
namespace {

using namespace testing;

// The result, or the kind of refusal.
template <typename Operation>
std::optional<Pattern> done(const Operation& operation, const Pattern& pattern) {
    try {
        return operation(pattern);
    } catch (const Impossible&) {
        return std::nullopt;
    }
}

// Where points are moved by 1e-7 mm, at a distance from a pivot of as little as a tenth of the piece.
constexpr double moved_mm = 2e-5;

template <typename Operation>
void expect_same_after(const Operation& operation, const Pattern& pattern) {
    Writing writing;
    writing.may_round = *rc::gen::arbitrary<bool>();
    const double tolerance = writing.may_round ? moved_mm : 1e-6;
    // Where an edge is redrawn, the fair curve is fitted to the items as they are divided.
    writing.may_divide = false;
    const std::optional<Pattern> once = done(operation, pattern);
    const std::optional<Pattern> otherwise = done(operation, written_otherwise(pattern, writing));
    RC_ASSERT(once.has_value() == otherwise.has_value());
    RC_CLASSIFY(once.has_value(), "done");
    if (!once) return;
    for (std::size_t k = 0; k < once->pieces.size(); ++k) {
        const std::vector<Run> runs = runs_of(once->pieces[k].outline);
        const std::vector<Run> others = runs_of(otherwise->pieces[k].outline);
        for (const Run& run : runs) {
            const Run* other = find_run(others, run.edge);
            RC_ASSERT(other != nullptr);
            RC_ASSERT(std::abs(run.length - other->length) <= tolerance);
        }
        expect_same_points(samples(once->pieces[k], 5),
                           samples_like(otherwise->pieces[k], once->pieces[k], 5), tolerance);
    }
}

RC_GTEST_PROP(OperationsDoTheSame, PivotWrittenOtherwise, ()) {
    const GeneratedPiece generated = any_piece(true, *testing::evenly(1, 3));
    const std::string place = any_place(generated.pattern.pieces[0]);
    RC_PRE(!place.empty());
    expect_same_after(
        [&](const Pattern& pattern) {
            return pivot(pattern, {"piece", generated.darts[0], place, {}, {}, "", "new", "", ""}).pattern;
        },
        generated.pattern);
}

RC_GTEST_PROP(OperationsDoTheSame, TrueDartWrittenOtherwise, ()) {
    const GeneratedPiece generated = any_piece(false, 1);
    expect_same_after(
        [&](const Pattern& pattern) {
            TrueDartRequest request;
            request.piece = "piece";
            request.dart = generated.darts[0];
            return true_dart(pattern, request).pattern;
        },
        generated.pattern);
}

RC_GTEST_PROP(OperationsDoTheSame, OpenWrittenOtherwise, ()) {
    const Pattern half = any_half();
    expect_same_after(
        [&](const Pattern& pattern) {
            OpenRequest request;
            request.piece = "half";
            return open(pattern, request).pattern;
        },
        half);
}

}  // namespace
}  // namespace dartwright
