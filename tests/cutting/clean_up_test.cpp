// The clean-up of cutting lines that run into themselves, with the rounds that it may take.

#include "dartwright/cutting/clean_up.hpp"

#include <gtest/gtest.h>

#include "cutting/cut_pieces.hpp"
#include "dartwright/cutting/raw_line.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright::cutting {
namespace {

// A notch 10 mm wide and 30 deep, in which allowances of 8 mm run into each other.
Piece notched() {
    return testing::straight_piece({{0, 0}, {100, 0}, {100, 80}, {55, 80}, {50, 50}, {45, 80}, {0, 80}},
                                   {8, 8, 8, 8, 8, 8, 8});
}

TEST(CleanUp, gives_a_simple_line_in_its_first_round) {
    const Piece piece = notched();
    const RawLine raw = raw_line(piece, {});
    ASSERT_FALSE(is_simple(raw.line.points));
    const SidedLine line = cleaned(piece, raw.line, 1);
    EXPECT_TRUE(is_simple(line.points));
    // The allowances fill the notch, so that a rectangle of 116 by 96 is left.
    EXPECT_NEAR(signed_area(line.points), 116 * 96, 1e-3);
    EXPECT_EQ(line.points, cutting_line(piece).points);
}

TEST(CleanUp, that_has_no_round_left_hands_out_no_line) {
    const Piece piece = notched();
    const RawLine raw = raw_line(piece, {});
    EXPECT_FALSE(outer_line(raw.line, 0));
    try {
        cleaned(piece, raw.line, 0);
        FAIL() << "a line";
    } catch (const NotCleaned& refusal) {
        EXPECT_EQ(refusal.piece, piece.name);
        EXPECT_STREQ(refusal.what(),
                     "the allowances of \"piece\" run into each other so that no simple line was found "
                     "round it; make them narrower where the outline bends inwards or is thin");
    }
}

TEST(CleanUp, refuses_a_line_that_encloses_less_than_the_piece) {
    const Piece piece = notched();
    const SidedLine part{{{0, 0}, {100, 0}, {100, 30}, {0, 30}}, std::vector<CutSide>(4)};
    EXPECT_TRUE(outer_line(part));
    EXPECT_THROW(cleaned(piece, part), NotCleaned);
}

TEST(CleanUp, says_that_an_outline_crosses_itself) {
    Piece crossed = testing::straight_piece({{0, 0}, {100, 0}, {0, 80}, {100, 80}}, {8, 8, 8, 8});
    try {
        cleaned(crossed, {{{0, 0}, {10, 0}, {10, 1}}, std::vector<CutSide>(3)}, 0);
        FAIL() << "a line";
    } catch (const NotCleaned&) {
        FAIL() << "the allowances are not at fault";
    } catch (const Impossible& refusal) {
        EXPECT_NE(std::string(refusal.what()).find("crosses itself"), std::string::npos);
    }
}

}  // namespace
}  // namespace dartwright::cutting
