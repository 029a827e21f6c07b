#include "dartwright/checks/cut_checks.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "checks/sample_patterns.hpp"
#include "darts/plain_front.hpp"
#include "dartwright/darts/pivot.hpp"

namespace dartwright {
namespace {

using sample::curve;
using sample::line;

Pattern single_panel() {
    Pattern pattern = sample::skirt();
    pattern.pieces.pop_back();
    pattern.seams.clear();
    return pattern;
}

TEST(grain_missing, and_cut_missing_are_told_together) {
    Pattern pattern = single_panel();
    pattern.pieces[0].grain.reset();
    pattern.pieces[0].cut.reset();
    EXPECT_EQ(sample::checks_of(check(pattern)), (sample::Names{"grain-missing", "cut-missing"}));
}

TEST(grain_direction, is_the_same_up_or_down) {
    Pattern pattern = single_panel();
    Grain& grain = *pattern.pieces[0].grain;
    for (const double sign : {1.0, -1.0}) {
        grain.to = grain.from + sign * 200 * Vector{std::sin(radians(0.4)), std::cos(radians(0.4))};
        EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
        grain.to = grain.from + sign * 200 * Vector{std::sin(radians(0.6)), std::cos(radians(0.6))};
        const Finding finding = sample::only_finding(pattern);
        EXPECT_EQ(finding.check, "grain-direction");
        EXPECT_NEAR(finding.measured.value(), 0.6, 1e-9);
    }
    grain.along.clear();
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

// A dart in the centre front turns what lies below it; the grain goes along what lies above.
TEST(grain_direction, may_go_along_one_stretch_of_an_edge_with_a_dart) {
    PivotRequest request{"front", "waist dart",  "centre front@280/waist", {}, {}, "neck", "",
                         "",      "centre front"};
    Pattern pattern = pivot(plain(), request).pattern;
    const sample::Names found = sample::checks_of(check(pattern));
    EXPECT_EQ(std::count(found.begin(), found.end(), "grain-direction"), 0);
    pattern.pieces[0].grain->to = pattern.pieces[0].grain->to + Vector{30, 0};
    const sample::Names slanted = sample::checks_of(check(pattern));
    EXPECT_EQ(std::count(slanted.begin(), slanted.end(), "grain-direction"), 1);
}

TEST(fold_straight, gives_the_largest_distance_from_the_chord) {
    Pattern pattern = single_panel();
    // Cubics that leave and return along the fold by 0.8 mm in the middle.
    Outline& outline = pattern.pieces[0].outline;
    outline.items[3] = curve("centre front", {0.8, 200}, {0, 300}, {0.8, 300});
    outline.items.push_back(curve("centre front", {0, 0}, {0.8, 100}, {0, 100}));
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "fold-straight");
    EXPECT_NEAR(finding.measured.value(), 0.8, 1e-9);
    EXPECT_EQ(finding.at.value(), (Point{0.8, 200}));
    pattern.tolerances["fold"] = 0.9;
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(fold_corner, is_judged_doubled_at_both_ends) {
    Pattern pattern = single_panel();
    Outline& outline = pattern.pieces[0].outline;
    const double rise = 200 * std::tan(radians(1.5));
    outline.start = {0, -rise};
    outline.items[2].to = {0, 400 + rise};
    outline.items[3].to = outline.start;
    const CheckReport report = check(pattern);
    ASSERT_EQ(sample::checks_of(report), (sample::Names{"fold-corner", "fold-corner"}));
    for (const Finding& finding : report.findings) EXPECT_NEAR(finding.measured.value(), 177, 1e-9);
    EXPECT_EQ(report.findings[0].at.value(), (Point{0, 400 + rise}));
    pattern.pieces[0].cut->ends["waist"] = CornerIs::free;
    EXPECT_EQ(sample::only_finding(pattern).at.value(), (Point{0, -rise}));
    pattern.pieces[0].cut->ends["hem"] = CornerIs::free;
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

}  // namespace
}  // namespace dartwright
