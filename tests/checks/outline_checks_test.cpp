#include "dartwright/checks/outline_checks.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "checks/sample_patterns.hpp"

namespace dartwright {
namespace {

using sample::curve;
using sample::line;

Outline& front_outline(Pattern& pattern) {
    return pattern.pieces[0].outline;
}

TEST(outline_gap, leaves_out_everything_else_of_the_piece_and_its_seams) {
    Pattern pattern = sample::skirt();
    pattern.pieces[0].grain.reset();
    pattern.pieces[0].cut.reset();
    front_outline(pattern).items.back().to = {3, 4};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "outline-gap");
    EXPECT_DOUBLE_EQ(finding.measured.value(), 5);
    EXPECT_EQ(finding.at.value(), (Point{3, 4}));
    EXPECT_NE(finding.message.find("left out"), std::string::npos);
    const CheckReport report = check(pattern);
    ASSERT_EQ(report.seams.size(), 1u);
    EXPECT_FALSE(report.seams[0].lengths.has_value());
    EXPECT_FALSE(report.seams[0].difference.has_value());
    EXPECT_FALSE(report.seams[0].passed);
}

TEST(outline_gap, within_the_tolerance_is_closed_and_judged) {
    Pattern pattern = sample::skirt();
    front_outline(pattern).items.back().to = {0.06, 0.07};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.tolerances["gap"] = 0.05;
    EXPECT_EQ(sample::only_finding(pattern).check, "outline-gap");
}

TEST(outline_gap, darts_of_an_open_outline_have_figures_but_do_not_pass) {
    Pattern pattern = sample::bodice();
    front_outline(pattern).items.back().to = {0, 11};
    const CheckReport report = check(pattern);
    ASSERT_EQ(report.darts.size(), 1u);
    EXPECT_DOUBLE_EQ(report.darts[0].intake, 40);
    EXPECT_FALSE(report.darts[0].passed);
}

TEST(outline_crossing, is_one_finding_a_place) {
    Pattern pattern = sample::skirt();
    pattern.seams.clear();
    front_outline(pattern).items[2] = curve("waist", {0, 400}, {140, -300}, {60, -300});
    const CheckReport report = check(pattern);
    std::size_t crossings = 0;
    for (const Finding& finding : report.findings) crossings += finding.check == "outline-crossing" ? 1 : 0;
    EXPECT_EQ(crossings, 2u);  // down through the hem and up again
}

TEST(outline_crossing, through_a_joint_of_two_items_is_one_place) {
    Pattern pattern = sample::skirt();
    pattern.seams.clear();
    Outline& outline = front_outline(pattern);
    // The hem in two halves; the waist's corner pokes through their joint.
    outline.items.insert(outline.items.begin(), line("hem", {100, 0}));
    outline.items[3] = line("waist", {100, 0});
    outline.items.insert(outline.items.begin() + 4, line("yoke", {0, 400}));
    const CheckReport report = check(pattern);
    std::size_t crossings = 0;
    for (const Finding& finding : report.findings) crossings += finding.check == "outline-crossing" ? 1 : 0;
    EXPECT_EQ(crossings, 1u);
}

TEST(outline_stray, smooth_in_the_middle_of_a_run_is_a_note) {
    Pattern pattern = sample::skirt();
    Outline& outline = front_outline(pattern);
    outline.items.insert(outline.items.begin(), {line("hem", {100, 0}), line("hem", {100.4, 0})});
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "outline-stray");
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(finding.measured.value(), 0.4, 1e-9);
    EXPECT_TRUE(check(pattern).passed);
}

TEST(outline_stray, a_short_curve_with_a_long_way_round_is_none) {
    Pattern pattern = sample::skirt();
    pattern.seams.clear();
    pattern.pieces[0].cut->fold.clear();
    Outline& outline = front_outline(pattern);
    outline.items[2].to = {0.5, 400};
    outline.items.insert(outline.items.begin() + 3, curve("tab", {0, 400}, {40, 440}, {-40, 440}));
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(outline_kink, gives_the_corner_and_respects_the_tolerance) {
    Pattern pattern = sample::skirt();
    pattern.seams.clear();
    Outline& outline = front_outline(pattern);
    outline.items.insert(outline.items.begin() + 1, line("side", {200 + 200 * std::tan(radians(2.5)), 200}));
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "outline-kink");
    EXPECT_EQ(finding.edge, "side");
    EXPECT_NEAR(finding.measured.value(), 5, 1e-9);
    EXPECT_EQ(finding.allowed.value(), 2);
    pattern.tolerances["kink"] = 5.1;
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(outline_kink, is_not_asked_between_edges_of_two_names) {
    Pattern pattern = sample::skirt();
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(outline_kink, sees_the_joint_of_a_run_that_goes_round_the_outline_s_start) {
    Pattern pattern = sample::skirt();
    pattern.seams.clear();
    Outline& outline = front_outline(pattern);
    outline.start = {200, 200};
    outline.items = {line("side", {190, 400}), line("waist", {0, 400}), line("centre front", {0, 0}),
                     line("hem", {200, 0}), line("side", {200, 200})};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "outline-kink");
    EXPECT_EQ(finding.at.value(), (Point{200, 200}));
}

}  // namespace
}  // namespace dartwright
