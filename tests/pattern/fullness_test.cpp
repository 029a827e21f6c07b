// Stretches of fullness: found whatever way an edge is divided or an outline begun, and what marks their
// ends.

#include "dartwright/pattern/fullness.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "support/evenly.hpp"

namespace dartwright {
namespace {

OutlineItem straight(const std::string& edge, Point to, double fullness = 0) {
    return {EdgeItem{edge, StraightShape{}, fullness}, to};
}

// A rectangle of 300 by 200 mm whose waist, at the bottom, has parts of 100, 140 and 60 mm.
Piece skirt(double fullness_mm) {
    Piece piece;
    piece.name = "skirt";
    piece.outline = {
        {0, 0},
        {straight("waist", {100, 0}), straight("waist", {240, 0}, fullness_mm), straight("waist", {300, 0}),
         straight("side", {300, 200}), straight("hem", {0, 200}), straight("centre", {0, 0})}};
    return piece;
}

TEST(fullness, is_gathered_above_the_share_that_can_be_eased) {
    const Piece gathered = skirt(40);
    const std::vector<FullStretch> stretches = full_stretches(gathered, runs_of(gathered.outline));
    ASSERT_EQ(stretches.size(), 1u);
    EXPECT_EQ(stretches[0].edge, "waist");
    EXPECT_DOUBLE_EQ(stretches[0].from_mm, 100);
    EXPECT_DOUBLE_EQ(stretches[0].to_mm, 200);
    EXPECT_DOUBLE_EQ(stretches[0].flat_mm(), 140);
    EXPECT_TRUE(stretches[0].is_gathered());
    // 15 % of what is sewn: 140 mm lie flat, 140 / 1.15 are sewn.
    const double limit = 140 - 140 / 1.15;
    const Piece eased = skirt(limit - 0.01);
    EXPECT_FALSE(full_stretches(eased, runs_of(eased.outline))[0].is_gathered());
    const Piece more = skirt(limit + 0.01);
    EXPECT_TRUE(full_stretches(more, runs_of(more.outline))[0].is_gathered());
}

TEST(fullness, of_less_than_a_hand_can_lay_in_is_not_spoken_of) {
    EXPECT_TRUE(full_stretches(skirt(0.99), runs_of(skirt(0.99).outline)).empty());
    EXPECT_EQ(full_stretches(skirt(1), runs_of(skirt(1).outline)).size(), 1u);
    EXPECT_TRUE(full_stretches(skirt(0), runs_of(skirt(0).outline)).empty());
    EXPECT_TRUE(full_stretches(Piece{}, {}).empty());
}

TEST(fullness, of_two_shares_beside_each_other_is_two_stretches) {
    Piece piece = skirt(40);
    piece.outline.items[0].as_edge()->fullness = 10;
    EXPECT_EQ(full_stretches(piece, runs_of(piece.outline)).size(), 2u);
    piece.outline.items[0].as_edge()->fullness = 100.0 * 40 / 140;
    const std::vector<FullStretch> joined = full_stretches(piece, runs_of(piece.outline));
    ASSERT_EQ(joined.size(), 1u);
    EXPECT_NEAR(joined[0].fullness_mm, 40 + 4000.0 / 140, 1e-9);
    EXPECT_EQ(joined[0].items, (std::vector<std::size_t>{0, 1}));
}

TEST(fullness, on_either_side_of_a_dart_is_two_stretches) {
    Piece piece = skirt(40);
    piece.outline.items[0].as_edge()->fullness = 4000.0 / 140;
    piece.outline.items.insert(piece.outline.items.begin() + 1,
                               {DartItem{"dart", {105, 80}, {}, {}, {}, "side"}, {110, 0}});
    piece.outline.items[2].as_edge()->fullness = 130 * 40.0 / 140;
    EXPECT_EQ(full_stretches(piece, runs_of(piece.outline)).size(), 2u);
}

TEST(fullness, says_which_notches_mark_its_ends) {
    Piece piece = skirt(40);
    const auto runs = runs_of(piece.outline);
    const FullStretch stretch = full_stretches(piece, runs)[0];
    const auto& waist = *find_run(runs, "waist");
    EXPECT_EQ(ends_of_stretch(piece, waist, stretch).from.kind, StretchEnd::Kind::unmarked);
    // The run is sewn 260 mm long; from the side end the stretch ends at 60 and begins at 160.
    piece.notches = {{"waist", "side", 60.5, NotchKind::single}, {"waist", "centre", 100, NotchKind::single}};
    const StretchEnds ends = ends_of_stretch(piece, waist, stretch);
    EXPECT_EQ(ends.from.kind, StretchEnd::Kind::notch);
    EXPECT_EQ(ends.from.notch, 1u);
    EXPECT_EQ(ends.to.notch, 2u);
    EXPECT_EQ(ends.notches, 2u);
    piece.notches[0].at = 62;
    EXPECT_EQ(ends_of_stretch(piece, waist, stretch).to.kind, StretchEnd::Kind::unmarked);
}

// A circle of one edge, gathered over a quarter, with the outline begun inside that quarter or before it.
TEST(fullness, goes_round_the_beginning_of_a_run_that_is_the_whole_outline) {
    const auto square = [](std::size_t first) {
        const std::vector<Point> corners{{0, 0}, {50, 0}, {100, 0}, {100, 100}, {0, 100}};
        Piece piece;
        piece.outline.start = corners[first];
        for (std::size_t k = 0; k < corners.size(); ++k) {
            const std::size_t item = (first + k) % corners.size();
            piece.outline.items.push_back(
                straight("brim", corners[(item + 1) % corners.size()], item < 2 ? 20 : 0));
        }
        return piece;
    };
    for (std::size_t first = 0; first < 5; ++first) {
        const Piece piece = square(first);
        const std::vector<FullStretch> stretches = full_stretches(piece, runs_of(piece.outline));
        ASSERT_EQ(stretches.size(), 1u) << first;
        EXPECT_NEAR(stretches[0].fullness_mm, 40, 1e-9) << first;
        EXPECT_NEAR(stretches[0].sewn_mm(), 60, 1e-9) << first;
        EXPECT_EQ(stretches[0].items.size(), 2u) << first;
        Piece with_points = piece;
        auto& items = with_points.outline.items;
        items.insert(items.begin(), straight("brim", piece.outline.start));
        items.push_back(straight("brim", piece.outline.start));
        const auto again = full_stretches(with_points, runs_of(with_points.outline));
        ASSERT_EQ(again.size(), 1u) << first << ": with edges of no length at both ends of the listing";
        EXPECT_NEAR(again[0].sewn_mm(), 60, 1e-9) << first;
    }
}

// Cuts one straight item of the waist in many, with its fullness in proportion, some of no length.
RC_GTEST_PROP(FullnessIs, TheSameHoweverAnEdgeIsDivided, ()) {
    const double fullness = *testing::evenly(100, 9000) / 100.0;
    const Piece whole = skirt(fullness);
    Piece divided = whole;
    const int parts = *testing::evenly(1, 6);
    std::vector<double> at{100};
    for (int i = 1; i < parts; ++i) at.push_back(100 + 140.0 * *testing::evenly(0, 101) / 100);
    at.push_back(240);
    std::sort(at.begin(), at.end());
    auto& items = divided.outline.items;
    items.erase(items.begin() + 1);
    for (std::size_t i = at.size() - 1; i > 0; --i)
        items.insert(items.begin() + 1, straight("waist", {at[i], 0}, fullness * (at[i] - at[i - 1]) / 140));
    const int turns = *testing::evenly(0, int(items.size()));
    divided.outline.start = items[std::size_t(turns)].to;
    std::rotate(items.begin(), items.begin() + turns + 1, items.end());
    const std::vector<FullStretch> one = full_stretches(whole, runs_of(whole.outline));
    const std::vector<FullStretch> other = full_stretches(divided, runs_of(divided.outline));
    RC_ASSERT(one.size() == 1u);
    RC_ASSERT(other.size() == 1u);
    RC_ASSERT(one[0].is_gathered() == other[0].is_gathered());
    RC_ASSERT(std::abs(one[0].from_mm - other[0].from_mm) <= 1e-6);
    RC_ASSERT(std::abs(one[0].to_mm - other[0].to_mm) <= 1e-6);
    RC_ASSERT(std::abs(one[0].fullness_mm - other[0].fullness_mm) <= 1e-6);
}

}  // namespace
}  // namespace dartwright
