#include "dartwright/drawing/allowance_words.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

using Lines = std::vector<std::string>;
using Widths = std::vector<std::pair<std::string, double>>;

/// A rectangle of four edges, longest first; an edge that has no width here has none that is decided.
Lines words_with(const Widths& widths, std::optional<double> undecided_mm = {}) {
    Piece piece;
    piece.name = "panel";
    piece.outline.items = {{EdgeItem{"left hem", StraightShape{}, 0}, {400, 0}},
                           {EdgeItem{"side", StraightShape{}, 0}, {400, 300}},
                           {EdgeItem{"waist", StraightShape{}, 0}, {10, 300}},
                           {EdgeItem{"centre", StraightShape{}, 0}, {0, 0}}};
    for (const auto& [edge, width_mm] : widths) piece.allowance.emplace_back(edge, width_mm);
    CuttingPiece cut;
    cut.piece = piece;
    cut.undecided_mm = undecided_mm;
    return allowance_words(cut, Unit::cm);
}

TEST(allowance_words, of_one_width_are_said_once) {
    EXPECT_EQ(words_with({{"left hem", 15}, {"side", 15}, {"waist", 15}, {"centre", 15}}),
              (Lines{"allowance 1.5\u00a0cm all round"}));
    EXPECT_EQ(words_with({{"left hem", 0}, {"side", 0}, {"waist", 0}, {"centre", 0}}),
              (Lines{"no allowance"}));
    EXPECT_EQ(words_with({}, 10), (Lines{"allowance 1\u00a0cm all round"}));
}

// The width of the longest stretch of edges comes first.
TEST(allowance_words, name_every_edge_where_there_are_few) {
    EXPECT_EQ(
        words_with({{"left hem", 40}, {"side", 15}, {"waist", 15}, {"centre", 0}}),
        (Lines{"allowance: side, waist\u00a01.5\u00a0cm; left\u00a0hem\u00a04\u00a0cm; centre\u00a0none"}));
}

TEST(allowance_words, say_once_that_none_is_decided) {
    EXPECT_EQ(words_with({}),
              (Lines{"allowance not decided, cut without: left\u00a0hem, side, waist, centre"}));
    EXPECT_EQ(words_with({{"waist", 10}}), (Lines{"allowance: waist\u00a01\u00a0cm",
                                                  "not decided, cut without: left\u00a0hem, side, centre"}));
}

TEST(allowance_words, leave_out_the_fold_and_tell_parts_of_an_edge) {
    Piece piece;
    piece.name = "panel";
    piece.cut = Cut{1, "centre", false, {}, ""};
    piece.outline.items = {{EdgeItem{"hem", StraightShape{}, 0}, {400, 0}},
                           {EdgeItem{"side", StraightShape{}, 0}, {400, 300}},
                           {EdgeItem{"waist", StraightShape{}, 0}, {0, 300}},
                           {EdgeItem{"centre", StraightShape{}, 0}, {0, 0}}};
    piece.allowance = {{"hem", 40.0},
                       {"waist", 10.0},
                       {"side", std::vector<AllowanceStretch>{{"hem", 0, 100, 25}, {"hem", 100, 300, 15}}}};
    CuttingPiece cut;
    cut.piece = piece;
    EXPECT_EQ(
        allowance_words(cut, Unit::cm),
        (Lines{
            "allowance: hem\u00a04\u00a0cm; waist\u00a01\u00a0cm; part\u00a0of\u00a0side\u00a01.5\u00a0cm; "
            "part\u00a0of\u00a0side\u00a02.5\u00a0cm"}));
}

}  // namespace
}  // namespace dartwright
