// Pieces laid on cloth: nothing overlaps, the grain runs along the cloth, folds lie on the fold.

#include "dartwright/cutting/lay.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "cutting/cut_pieces.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::distance_to_side;
using testing::real_between;

LayPiece polygon(const char* name, std::vector<Point> points, int quantity = 2) {
    LayPiece piece;
    piece.name = name;
    piece.polygon = std::move(points);
    piece.quantity = quantity;
    return piece;
}

LayPiece rectangle(const char* name, double width, double height, int quantity = 2) {
    return polygon(name, {{0, 0}, {width, 0}, {width, height}, {0, height}}, quantity);
}

// Half of a front: the fold is its left side, walked down.
LayPiece half_on_fold(double width, double height) {
    LayPiece piece = rectangle("front", width, height, 1);
    piece.fold = LayPiece::FoldLine{{0, height}, {0, -1}};
    return piece;
}

LayRequest folded(double width_mm, double gap_mm = 0) {
    return {width_mm, true, false, gap_mm};
}

TEST(Lay, of_pairs_puts_them_side_by_side_through_both_plies) {
    const Lay result = lay({rectangle("back", 300, 500), rectangle("side", 300, 450)}, folded(1400, 5));
    ASSERT_EQ(result.pieces.size(), 2u);
    EXPECT_NEAR(result.length_mm, 500, 1e-9);
    EXPECT_NEAR(result.width_mm, 700, 1e-9);
    EXPECT_NEAR(result.area_mm2, 300 * 500 + 300 * 450, 1e-6);
    EXPECT_NEAR(result.bound_mm, 500, 1e-9) << "the longest piece";
    for (const LaidPiece& piece : result.pieces) EXPECT_EQ(piece.how, "through both plies");
    EXPECT_TRUE(result.notes.empty());
}

TEST(Lay, of_a_piece_on_the_fold_begins_at_the_fold) {
    const Lay result = lay({half_on_fold(250, 450), rectangle("back", 300, 500)}, folded(1200, 5));
    EXPECT_TRUE(result.pieces[0].is_on_fold);
    double least = 1e9;
    for (const Point p : result.pieces[0].polygon) least = std::min(least, p.x);
    EXPECT_EQ(least, 0);
    EXPECT_NEAR(result.length_mm, 500, 1e-9);
}

TEST(Lay, says_where_the_cloth_below_is_left) {
    const Lay result = lay({rectangle("pocket", 100, 100, 1), rectangle("band", 50, 400, 3)}, folded(800));
    ASSERT_EQ(result.pieces.size(), 3u);
    EXPECT_EQ(result.pieces[0].how, "through the upper ply only");
    EXPECT_EQ(result.pieces[1].how, "through both plies");
    EXPECT_EQ(result.pieces[2].how, "through the upper ply only");
    EXPECT_EQ(result.notes.size(), 2u);
}

TEST(Lay, of_alike_copies_on_folded_cloth_cuts_each_alone) {
    LayPiece alike = rectangle("badge", 100, 100, 2);
    alike.are_alike = true;
    for (const LaidPiece& piece : lay({alike}, folded(800)).pieces) {
        EXPECT_EQ(piece.how, "through the upper ply only");
        EXPECT_FALSE(piece.is_mirrored);
    }
}

TEST(Lay, on_opened_cloth_turns_half_of_a_pair_face_down) {
    LayRequest request{800, false, false, 5};
    const Lay result = lay({rectangle("back", 300, 500, 2)}, request);
    ASSERT_EQ(result.pieces.size(), 2u);
    EXPECT_NE(result.pieces[0].is_mirrored, result.pieces[1].is_mirrored);
    EXPECT_NEAR(result.length_mm, 500, 1e-9);
    EXPECT_THROW(lay({half_on_fold(250, 450)}, request), Impossible);
}

// Two right triangles make a rectangle if one may be turned upside down.
TEST(Lay, is_shorter_where_grains_may_point_both_ways) {
    const std::vector<Point> triangle{{0, 0}, {300, 0}, {0, 600}};
    LayPiece wedge = polygon("wedge", triangle, 4);
    LayRequest request = folded(620);
    const double both_ways = lay({wedge}, request).length_mm;
    request.is_one_way = true;
    const Lay one_way = lay({wedge}, request);
    EXPECT_LT(both_ways, 650);
    for (const LaidPiece& piece : one_way.pieces) EXPECT_EQ(piece.grain, (Vector{0, 1}));
    EXPECT_LE(both_ways, one_way.length_mm);
}

TEST(Lay, turns_a_piece_so_that_its_grain_runs_along_the_cloth) {
    LayPiece level = rectangle("waistband", 700, 60);
    level.grain = {1, 0};
    const Lay result = lay({level}, folded(200));
    EXPECT_NEAR(result.length_mm, 700, 1e-9);
}

TEST(Lay, refuses_a_piece_wider_than_the_cloth_and_says_what_would_do) {
    try {
        lay({rectangle("cloak", 900, 900)}, folded(1400));
        FAIL();
    } catch (const Impossible& refused) {
        EXPECT_NE(std::string(refused.what()).find("at least 1800 mm wide"), std::string::npos)
            << refused.what();
    }
    EXPECT_THROW(lay({}, folded(0)), BadWords);
    EXPECT_THROW(lay({}, folded(std::nan(""))), BadWords);
    EXPECT_THROW(lay({}, folded(1000, -1)), BadWords);
    EXPECT_EQ(lay({}, folded(1000)).length_mm, 0);
}

double clearance(const std::vector<Point>& a, const std::vector<Point>& b) {
    double least = 1e300;
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t k = 0; k < b.size(); ++k) {
            least = std::min(least, distance_to_side(b[k], b[(k + 1) % b.size()], a[i]));
            least = std::min(least, distance_to_side(a[i], a[(i + 1) % a.size()], b[k]));
        }
    }
    return least;
}

// Stars of any number of points, so that pieces nest into each other.
LayPiece any_lay_piece(int number) {
    const int corners = *testing::evenly(3, 9);
    const double size = real_between(20, 300);
    std::vector<Point> points;
    for (int k = 0; k < corners; ++k) {
        const double angle = 2 * pi * (k + real_between(0, 0.9)) / corners;
        points.push_back(
            {size * real_between(0.3, 1) * std::cos(angle), size * real_between(0.3, 1) * std::sin(angle)});
    }
    LayPiece piece = polygon("any", points, *testing::evenly(1, 4));
    piece.name += std::to_string(number);
    const double grain = real_between(-pi, pi);
    piece.grain = {std::cos(grain), std::sin(grain)};
    piece.are_alike = *rc::gen::arbitrary<bool>();
    return piece;
}

RC_GTEST_PROP(LayKeeps, PiecesWholeApartUprightAndOnTheCloth, ()) {
    std::vector<LayPiece> pieces;
    const int count = *testing::evenly(1, 6);
    for (int i = 0; i < count; ++i) {
        pieces.push_back(any_lay_piece(i));
        RC_PRE(is_simple(pieces.back().polygon) && signed_area(pieces.back().polygon) > 100);
    }
    const LayRequest request{real_between(1300, 2000), *rc::gen::arbitrary<bool>(),
                             *rc::gen::arbitrary<bool>(), real_between(0, 20)};
    const Lay result = lay(pieces, request);
    RC_ASSERT(result.length_mm >= result.bound_mm - 1e-6);
    for (std::size_t i = 0; i < result.pieces.size(); ++i) {
        const LaidPiece& piece = result.pieces[i];
        for (const Point p : piece.polygon) {
            RC_ASSERT(p.x >= -1e-9 && p.x <= result.width_mm + 1e-9);
            RC_ASSERT(p.y >= -1e-9 && p.y <= result.length_mm + 1e-9);
        }
        RC_ASSERT(std::abs(std::abs(piece.grain.y) - 1) < 1e-12);
        RC_ASSERT(!request.is_one_way || piece.grain.y > 0);
        const auto source = std::find_if(pieces.begin(), pieces.end(),
                                         [&](const LayPiece& p) { return p.name == piece.name; });
        RC_ASSERT(std::abs(signed_area(piece.polygon) - signed_area(source->polygon)) < 1e-6);
        for (std::size_t k = 0; k < i; ++k)
            RC_ASSERT(clearance(piece.polygon, result.pieces[k].polygon) >= request.gap_mm - 1e-5);
    }
}

}  // namespace
}  // namespace dartwright
