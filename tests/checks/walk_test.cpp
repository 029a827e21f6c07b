#include "dartwright/checks/walk.hpp"

#include <gtest/gtest.h>

#include "checks/sample_patterns.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {
namespace {

std::vector<WalkMark> marks_of(const SeamWalk& walk) {
    std::vector<WalkMark> marks;
    for (const WalkRow& row : walk.rows) marks.push_back(row.mark);
    return marks;
}

TEST(walk_seam, lays_notches_beside_each_other) {
    Pattern pattern = sample::skirt({200, 400}, {200, 403});
    pattern.seams[0].ease = Ease{2, 2, false};
    pattern.pieces[0].notches = {{"side", "hem", 100, NotchKind::single},
                                 {"side", "hem", 300, NotchKind::double_}};
    pattern.pieces[1].notches = {{"side", "waist", 302, NotchKind::single}};
    const SeamWalk walk = walk_seam(pattern, "side");
    ASSERT_EQ(marks_of(walk),
              (std::vector{WalkMark::start, WalkMark::notch, WalkMark::notch, WalkMark::end}));
    EXPECT_EQ(walk.side_names, (std::array<std::string, 2>{"front", "back"}));
    EXPECT_EQ(walk.rows[1].name, "single");
    EXPECT_NEAR(walk.rows[1].sides[1].value(), 101, 1e-9);
    EXPECT_NEAR(walk.rows[1].difference.value(), 1, 1e-9);
    EXPECT_EQ(walk.rows[2].name, "double");
    EXPECT_FALSE(walk.rows[2].sides[1].has_value());
    EXPECT_FALSE(walk.rows[2].difference.has_value());
    EXPECT_NEAR(walk.rows[3].difference.value(), 3, 1e-9);
    EXPECT_NEAR(walk.difference, 1, 1e-9);
    EXPECT_EQ(walk.ease, 2);
    EXPECT_NEAR(walk.corners_deg[0], 180, 1e-9);
    EXPECT_NEAR(walk.corners_deg[1], 180, 1e-9);
}

TEST(walk_seam, meets_darts_and_corners_of_parts_at_their_sewn_distances) {
    Pattern pattern = sample::bodice();
    const double half = length_of_item(pattern.pieces[0].outline, 0);
    const double whole = half + length_of_item(pattern.pieces[0].outline, 2);
    pattern.pieces.push_back(sample::panel("skirt", "centre", {120, 400}));
    pattern.pieces.push_back(sample::panel("gore", "gore centre", {whole - 120, 400}));
    Seam seam;
    seam.name = "waist";
    seam.joins[0] = {{"skirt", "waist", "centre", false}, {"gore", "waist", "gore centre", false}};
    seam.joins[1] = {{"front", "waist", "centre front", false}};
    pattern.seams = {seam};
    const SeamWalk walk = walk_seam(pattern, "waist");
    ASSERT_EQ(marks_of(walk),
              (std::vector{WalkMark::start, WalkMark::dart, WalkMark::part_corner, WalkMark::end}));
    EXPECT_EQ(walk.rows[1].name, "front waist dart");
    EXPECT_NEAR(walk.rows[1].sides[1].value(), half, 1e-9);
    EXPECT_EQ(walk.rows[2].name, "skirt waist and gore waist");
    EXPECT_NEAR(walk.rows[2].sides[0].value(), 120, 1e-9);
    EXPECT_NEAR(walk.difference, 0, 1e-9);
}

TEST(walk_seam, refuses_unknown_seams_and_open_outlines) {
    Pattern pattern = sample::skirt();
    EXPECT_THROW(walk_seam(pattern, "sleeve"), UnknownName);
    pattern.pieces[1].outline.items.back().to = {0, 9};
    EXPECT_THROW(walk_seam(pattern, "side"), Impossible);
}

}  // namespace
}  // namespace dartwright
