#include "dartwright/pattern/piece.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

Piece front() {
    Piece piece;
    piece.name = "front";
    piece.outline = sample::front();
    return piece;
}

TEST(find_dart, gives_the_item_or_nothing) {
    EXPECT_EQ(find_dart(front(), "second"), 2u);
    EXPECT_EQ(find_dart(front(), "waist"), std::nullopt) << "an edge of that name is no dart";
    EXPECT_EQ(find_dart(Piece{}, "second"), std::nullopt);
}

TEST(cloth_area, leaves_out_wedges_drawn_to_their_pivots) {
    Piece piece = front();
    const double rectangle = 180 * 400;
    EXPECT_DOUBLE_EQ(cloth_area(piece), rectangle - 3 * 1200);
    piece.outline.items[0].as_dart()->pivot = Point{50, 60};
    EXPECT_DOUBLE_EQ(cloth_area(piece), rectangle - 1800 - 2 * 1200);
}

TEST(cloth_area, leaves_out_darts_with_two_points) {
    Piece piece = front();
    piece.double_darts.push_back({"inner", {90, 150}, {90, 350}, {{{80, 240}, {100, 240}}}, ""});
    // A kite of 200 by 20: half the product of its diagonals.
    EXPECT_DOUBLE_EQ(cloth_area(piece), 180 * 400 - 3 * 1200 - 2000);
    std::swap(piece.double_darts[0].widest[0], piece.double_darts[0].widest[1]);
    EXPECT_DOUBLE_EQ(cloth_area(piece), 180 * 400 - 3 * 1200 - 2000) << "whichever side is named first";
}

TEST(cloth_area, is_that_of_the_cloth_whichever_way_the_outline_is_walked) {
    Piece piece = front();
    piece.outline = reversed(piece.outline);
    EXPECT_DOUBLE_EQ(cloth_area(piece), 180 * 400 - 3 * 1200);
    EXPECT_EQ(cloth_area(Piece{}), 0);
}

// The generator's mouths are chords of a circle about one pivot: with the wedges taken out, the cloth is a
// sum of sectors, so the area of the wedges is known.
RC_GTEST_PROP(cloth_area_property, is_the_area_to_the_points_less_what_is_between_points_and_pivots, ()) {
    const Piece piece = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    double expected = signed_area(piece.outline, DartsDrawn::to_points);
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        const Point a = start_of_item(piece.outline, i);
        const Point b = piece.outline.items[i].to;
        // Half the product of the mouth and the back-off, the two being square to each other.
        expected -= distance(a, b) * distance(dart->point, *dart->pivot) / 2;
    }
    RC_ASSERT(std::abs(cloth_area(piece) - expected) <= 1e-11 * expected);
}

}  // namespace
}  // namespace dartwright
