// The list of operations tells the whole story: done again from the block, it gives the same pattern.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/darts/replay.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"

namespace dartwright::testing {
namespace {

// Of what a chain leaves to the library, something is said: how much, how far from the pivot.
PivotRequest any_pivot(const Pattern& pattern) {
    PivotRequest request{
        "piece", any_dart(pattern.pieces[0]), any_place(pattern.pieces[0]), {}, {}, "", "said", "", ""};
    RC_PRE(!request.to.empty());
    switch (*evenly(0, 4)) {
        case 0:
            request.part.share = real_between(0.01, 1);
            break;
        // As from the command line, where angles are degrees.
        case 1:
            request.part.angle_rad = radians(real_between(0.5, 4));
            break;
        case 2:
            request.part.intake_mm = real_between(1, 4);
            break;
        default:
            break;
    }
    if (*rc::gen::arbitrary<bool>()) request.back_off_mm = real_between(0, 6);
    return request;
}

Pattern any_made(const Pattern& block) {
    Pattern pattern = any_chain(block, *evenly(0, 5));
    try {
        pattern = pivot(pattern, any_pivot(pattern)).pattern;
    } catch (const Impossible&) {
        RC_DISCARD("not possible there");
    }
    return any_chain(pattern, *evenly(0, 3), 10);
}

RC_GTEST_PROP(Replay, GivesTheSameBytes, ()) {
    const Pattern block = any_piece(true, *evenly(1, 4)).pattern;
    const Pattern made = any_made(block);
    RC_ASSERT(problems_of(made).empty());
    const ReplayResult again = replay(block, made.made);
    RC_ASSERT(again.steps == made.made);
    RC_ASSERT(again.pattern.pieces == made.pieces);
    RC_ASSERT(write_pattern(again.pattern) == write_pattern(made));
}

Pattern through_a_file(const Pattern& pattern) {
    return read_pattern(write_pattern(pattern), "between.json");
}

// As from the command line, where the pattern is written and read between any two operations.
RC_GTEST_PROP(Replay, GivesTheSameBytesThroughFiles, ()) {
    Pattern block = any_piece(true, *evenly(1, 3)).pattern;
    block.unit = std::array{Unit::mm, Unit::cm, Unit::inch}[std::size_t(*evenly(0, 3))];
    const Pattern start = through_a_file(block);
    Pattern pattern = start;
    for (int step = 0; step < 4; ++step) pattern = through_a_file(any_step(pattern, step));
    const ReplayResult again = replay(start, pattern.made, through_a_file);
    RC_ASSERT(write_pattern(again.pattern) == write_pattern(pattern));
}

RC_GTEST_PROP(Replay, GoesOnFromAPatternOnTheWay, ()) {
    const Pattern block = any_piece(true, 2).pattern;
    const Pattern half = any_made(block);
    const Pattern made = any_chain(half, 3, 20);
    const ReplayResult again = replay(half, made.made);
    RC_ASSERT(again.steps.size() == made.made.size() - half.made.size());
    RC_ASSERT(again.pattern.pieces == made.pieces);
    RC_ASSERT(again.pattern.made == made.made);
}

}  // namespace
}  // namespace dartwright::testing
