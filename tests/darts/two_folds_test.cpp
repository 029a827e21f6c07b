// A piece on two folds: what is so at the one is so at the other. Each case has the dart beside the fold that
// is named second, and the same piece with that fold alone, or named first, beside it.

#include <gtest/gtest.h>

#include "darts/plain_front.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/folding/usual_press.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

Pattern plain_on(const std::string& fold, const std::string& second) {
    Pattern pattern = plain();
    pattern.pieces[0].cut->fold = fold;
    pattern.pieces[0].cut->second_fold = second;
    return pattern;
}

/// A panel of 200 by 400 with a dart in its waist, 12 mm from the centre.
Piece panel_with_dart_by_the_centre(const std::string& fold, const std::string& second) {
    Piece piece;
    piece.name = "panel";
    piece.cut = Cut{1, fold, false, {}, second};
    const auto edge = [](const char* name, Point to) {
        return OutlineItem{EdgeItem{name, StraightShape{}, 0}, to};
    };
    DartItem dart;
    dart.name = "dart";
    dart.point = {32, 180};
    dart.press = "centre";
    piece.outline.items = {edge("waist", {12, 0}),   {dart, {52, 0}},       edge("waist", {200, 0}),
                           edge("side", {200, 400}), edge("top", {0, 400}), edge("centre", {0, 0})};
    return piece;
}

TEST(two_folds, a_cap_goes_on_over_either) {
    const Piece first = panel_with_dart_by_the_centre("centre", "");
    for (const auto& [fold, second] : {std::pair{"centre", "top"}, std::pair{"top", "centre"}}) {
        const Cap cap = cap_of(panel_with_dart_by_the_centre(fold, second), 1, PressSide::before);
        // As in a waist that does not end: the tip 180 / cos 2f from the point, where tan f = 20 / 180.
        EXPECT_NEAR(cap.tip.y, -4.5, 1e-9) << second;
        EXPECT_EQ(cap.curves, cap_of(first, 1, PressSide::before).curves) << second;
    }
}

TEST(two_folds, a_dart_in_either_has_no_cap) {
    for (const auto& [fold, second] : {std::pair{"waist", "top"}, std::pair{"top", "waist"}})
        EXPECT_THROW(cap_of(panel_with_dart_by_the_centre(fold, second), 1, PressSide::before), Impossible);
}

TEST(two_folds, an_upright_dart_is_pressed_towards_the_upright_one) {
    for (const auto& [fold, second] : {std::pair{"centre", "top"}, std::pair{"top", "centre"}})
        EXPECT_EQ(usual_press(panel_with_dart_by_the_centre(fold, second), {0.1, 1}), "centre") << second;
}

// The fold in which the dart opens becomes the seam; the piece stays on the other, and each keeps its ends.
TEST(two_folds, the_one_in_which_a_dart_opens_becomes_the_seam) {
    for (const auto& [fold, second] :
         {std::pair{"centre front", "shoulder"}, std::pair{"shoulder", "centre front"}}) {
        Pattern pattern = plain_on(fold, second);
        pattern.pieces[0].cut->ends = {{"waist", CornerIs::free}, {"armhole", CornerIs::smooth}};
        PivotRequest request;
        request.piece = "front";
        request.dart = "waist dart";
        request.to = "centre front@180/waist";
        request.centre_seam = "middle";
        const Pattern moved = pivot(pattern, request).pattern;
        EXPECT_TRUE(problems_of(moved).empty());
        const Cut& cut = *moved.pieces[0].cut;
        EXPECT_EQ(cut.fold, "shoulder") << second;
        EXPECT_EQ(cut.second_fold, "") << second;
        EXPECT_EQ(cut.quantity, 2);
        EXPECT_EQ(cut.ends, (std::map<std::string, CornerIs>{{"armhole", CornerIs::smooth}}));
        ASSERT_EQ(moved.seams.size(), 1u);
        EXPECT_EQ(moved.seams[0].joins[0][0].edge, "centre front");
        EXPECT_EQ(moved.seams[0].ends, (std::map<std::string, CornerIs>{{"waist", CornerIs::free}}));
    }
}

// The dart stands in the one fold, so that both parts of the cut have some of it; the other says what is
// held.
TEST(two_folds, the_one_that_lies_on_one_side_of_a_cut_is_held) {
    PivotRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = "side@100/armhole";
    Pattern held = plain_on("centre front", "");
    const Pattern expected = pivot(held, request).pattern;
    for (const auto& [fold, second] :
         {std::pair{"centre front", "waist"}, std::pair{"waist", "centre front"}}) {
        Pattern pattern = plain_on(fold, second);
        pattern.pieces[0].grain.reset();
        EXPECT_EQ(pivot(pattern, request).pattern.pieces[0].outline, expected.pieces[0].outline) << second;
    }
}

// A whole that unfolds to four layers: a part on one of the folds is cut twice on it.
TEST(two_folds, of_a_piece_cut_in_two_go_with_the_part_that_has_them) {
    CloseSeamRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = "shoulder@50%";
    request.first_name = "middle front";
    request.second_name = "side front";
    request.seam = "princess seam";
    for (const auto& [fold, second] :
         {std::pair{"centre front", "side"}, std::pair{"side", "centre front"}}) {
        const Pattern parted = close_as_seam(plain_on(fold, second), request).pattern;
        EXPECT_TRUE(problems_of(parted).empty()) << UnsoundPattern(problems_of(parted)).what();
        ASSERT_EQ(parted.pieces.size(), 2u);
        for (const Piece& piece : parted.pieces) {
            const bool is_middle = find_run(runs_of(piece.outline), "centre front") != nullptr;
            EXPECT_EQ(piece.cut->fold, is_middle ? "centre front" : "side") << second;
            EXPECT_EQ(piece.cut->second_fold, "") << second;
            EXPECT_EQ(piece.cut->quantity, 2) << second;
        }
    }
}

}  // namespace
}  // namespace dartwright
