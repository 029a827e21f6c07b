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

TEST(fold_straight, is_the_only_fault_of_a_fold_bowed_by_straight_parts) {
    Pattern pattern = single_panel();
    Outline& outline = pattern.pieces[0].outline;
    outline.items[3] = line("centre front", {6, 300});
    outline.items.push_back(line("centre front", {8, 100}));
    outline.items.push_back(line("centre front", {0, 0}));
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "fold-straight");
    EXPECT_NEAR(finding.measured.value(), 8, 1e-9);
    // Where it is no fold, its corners are told; and so are those of a fold as straight as it need be.
    pattern.pieces[0].cut->fold.clear();
    EXPECT_EQ(sample::checks_of(check(pattern)), (sample::Names{"outline-kink", "outline-kink"}));
    pattern.pieces[0].cut->fold = "centre front";
    pattern.tolerances["fold"] = 8.1;
    const sample::Names found = sample::checks_of(check(pattern));
    EXPECT_EQ(std::count(found.begin(), found.end(), "outline-kink"), 2);
}

TEST(fold_corner, of_a_bowed_fold_is_judged_against_the_line_between_its_ends) {
    for (const double rise_deg : {0.0, 3.0, -3.0}) {
        Pattern pattern = single_panel();
        Outline& outline = pattern.pieces[0].outline;
        const double rise = 200 * std::tan(radians(rise_deg));
        outline.items[2].to = {0, 400 + rise};
        outline.items[3] = curve("centre front", {0, 0}, {12, 280}, {12, 120});
        const sample::Names found = sample::checks_of(check(pattern));
        if (rise_deg == 0) {
            EXPECT_EQ(found, sample::Names{"fold-straight"});
            continue;
        }
        ASSERT_EQ(found, (sample::Names{"fold-straight", "fold-corner"}));
        for (const Finding& finding : check(pattern).findings) {
            if (finding.check != "fold-corner") continue;
            EXPECT_EQ(finding.at.value(), (Point{0, 400 + rise}));
            EXPECT_NEAR(finding.measured.value(), 180 - 2 * rise_deg, 1e-9);
            EXPECT_NE(finding.message.find("opened out at centre front ruled straight, waist"),
                      std::string::npos);
        }
    }
}

TEST(fold_corner, of_two_bowed_folds_is_judged_between_their_lines) {
    for (const double lean : {0.0, 20.0}) {
        Pattern pattern = single_panel();
        Piece& piece = pattern.pieces[0];
        piece.cut->second_fold = piece.outline.items[0].as_edge()->edge;
        Outline& outline = piece.outline;
        outline.start = {lean, 0};
        outline.items[0] = curve(piece.cut->second_fold, outline.items[0].to, {60, -9}, {140, -9});
        outline.items[3] = curve("centre front", {lean, 0}, {12, 280}, {12, 120});
        const sample::Names found = sample::checks_of(check(pattern));
        EXPECT_EQ(std::count(found.begin(), found.end(), "fold-straight"), 2);
        // The leaning fold is square to nothing at either end.
        EXPECT_EQ(std::count(found.begin(), found.end(), "fold-corner"), lean == 0 ? 0 : 2);
    }
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
