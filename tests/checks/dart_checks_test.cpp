#include "dartwright/checks/dart_checks.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "checks/sample_patterns.hpp"

namespace dartwright {
namespace {

using sample::dart_of_bodice;
using sample::line;

TEST(dart_mouth, is_judged_about_the_point) {
    Pattern pattern = sample::bodice();
    Outline& outline = pattern.pieces[0].outline;
    outline.start = {0, 0};
    outline.items[0] = line("waist", {80, 0});
    outline.items[2] = line("waist", {200, 0});
    outline.items.back().to = {0, 0};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-mouth");
    EXPECT_EQ(finding.severity, Severity::fault);
    EXPECT_EQ(finding.edge, "waist");
    // A straight waist closes to a corner of the sewn angle.
    EXPECT_NEAR(finding.measured.value(), degrees(2 * std::atan2(20, 150)), 1e-9);
}

TEST(dart_mouth, true_about_the_pivot_only_is_a_note) {
    Pattern pattern = sample::bodice();
    // The waist stays square to the lines from (100, 150), which is now the pivot; the point is far short.
    dart_of_bodice(pattern).pivot = {100, 150};
    dart_of_bodice(pattern).point = {100, 110};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-mouth");
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(finding.measured.value(), degrees(2 * (std::atan2(20, 110) - std::atan2(20, 150))), 1e-9);
    EXPECT_TRUE(check(pattern).passed);
    EXPECT_TRUE(check(pattern).darts[0].passed);
}

// Two darts side by side, of which the second begins where the first ends.
Pattern twin_darts() {
    Pattern pattern = sample::bodice();
    Outline& outline = pattern.pieces[0].outline;
    DartItem first = sample::waist_dart();
    first.point = {90, 150};
    DartItem second = first;
    second.name = "second dart";
    second.point = {110, 150};
    outline.items[1] = {first, {100, 0}};
    outline.items.insert(outline.items.begin() + 2, {second, {120, 0}});
    return pattern;
}

TEST(dart_mouth, of_darts_without_an_edge_between_is_judged_once) {
    Pattern pattern = twin_darts();
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    Outline& outline = pattern.pieces[0].outline;
    outline.items[3] = sample::curve("waist", {200, 10}, {150, 0}, {170, 10});
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-mouth");
    EXPECT_EQ(finding.dart, "waist dart");
}

TEST(dart_mouth, in_a_corner_is_left_to_the_corner) {
    Pattern pattern = sample::bodice();
    Outline& outline = pattern.pieces[0].outline;
    outline.start = {0, 0};
    outline.items[0] = line("waist", {80, 0});
    outline.items[2] = line("front waist", {200, 0});
    outline.items.back().to = {0, 0};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(dart_point, beyond_the_pivot) {
    Pattern pattern = sample::bodice();
    dart_of_bodice(pattern).pivot = {100, 140};
    dart_of_bodice(pattern).back_off = 20;  // which the one finding covers
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-point");
    EXPECT_NEAR(finding.measured.value(), -10, 1e-9);
    EXPECT_NE(finding.message.find("beyond"), std::string::npos);
}

TEST(dart_point, off_the_bisector_by_more_than_the_legs_show) {
    Pattern pattern = sample::bodice();
    dart_of_bodice(pattern).pivot = {100, 170};
    dart_of_bodice(pattern).point = {101.2, 150};  // legs differ by only 0.32 mm
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-point");
    EXPECT_NEAR(std::abs(finding.measured.value()), 1.2, 1e-9);
}

TEST(dart_point, nearer_than_asked) {
    Pattern pattern = sample::bodice();
    dart_of_bodice(pattern).pivot = {100, 170};
    dart_of_bodice(pattern).back_off = 20.4;  // within the tolerance of the legs
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    dart_of_bodice(pattern).back_off = 25;
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-point");
    EXPECT_NEAR(finding.difference.value(), -5, 1e-9);
}

TEST(dart_point, outside_the_piece) {
    Pattern pattern = sample::bodice();
    Outline& outline = pattern.pieces[0].outline;
    // The wedge drawn outwards; the edge square to its legs.
    dart_of_bodice(pattern).point = {100, -150};
    outline.items[0] = sample::curve("waist", {80, 0}, {30, 10}, {50, -4});
    outline.items[2] = sample::curve("waist", {200, 10}, {150, -4}, {170, 10});
    const std::vector<std::string> checks = sample::checks_of(check(pattern));
    EXPECT_EQ(checks, sample::Names{"dart-point"});
}

TEST(dart_crossing, over_another_dart_is_not_also_an_outline_crossing) {
    Pattern pattern = sample::bodice();
    Outline& outline = pattern.pieces[0].outline;
    DartItem side = sample::waist_dart();
    side.name = "side dart";
    side.point = {90, 100};
    // The side runs square to the legs of its dart at the mouth (200, 80), (200, 120).
    const double slope = 20.0 / 110;
    outline.items[3] = sample::curve("side", {200, 80}, {200, 40}, {200 - 15 * slope, 65});
    outline.items.insert(outline.items.begin() + 4, {side, {200, 120}});
    outline.items.insert(outline.items.begin() + 5,
                         sample::curve("side", {200, 350}, {200 - 15 * slope, 135}, {200, 200}));
    const Finding finding = sample::only_finding(pattern);  // for all the places where the four legs meet
    EXPECT_EQ(finding.check, "dart-crossing");
    EXPECT_EQ(finding.dart, "waist dart");
    EXPECT_NE(finding.message.find("side dart"), std::string::npos);
}

TEST(dart_crossing, darts_may_meet_at_a_common_point_to_a_rounding) {
    for (const double apart : {0.0, 1e-12, -1e-12, 0.04, -0.04}) {
        Pattern pattern = sample::bodice();
        Outline& outline = pattern.pieces[0].outline;
        DartItem top = sample::waist_dart();
        top.name = "top dart";
        top.point = {100, 150 - apart};  // into the other dart's wedge, or short of it
        outline.items[4] = line("top", {120, 350});
        outline.items.insert(outline.items.begin() + 5, {top, {80, 350}});
        outline.items.insert(outline.items.begin() + 6, line("top", {0, 350}));
        // Straight, so that only the mouth is found.
        EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{"dart-mouth"}) << apart;
    }
}

TEST(dart_crossing, double_darts_keep_inside_the_piece_and_clear_of_darts) {
    Pattern pattern = sample::bodice();
    pattern.pieces[0].double_darts = {{"fish", {40, 60}, {40, 260}, {{{30, 160}, {50, 160}}}, ""}};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.pieces[0].double_darts[0].widest = {{{-10, 160}, {90, 160}}};
    EXPECT_EQ(sample::only_finding(pattern).check, "dart-crossing");
    pattern.pieces[0].double_darts[0] = {"fish", {300, 60}, {300, 260}, {{{290, 160}, {310, 160}}}, ""};
    EXPECT_NE(sample::only_finding(pattern).message.find("outside"), std::string::npos);
    pattern.pieces[0].double_darts[0] = {"fish", {85, 60}, {85, 260}, {{{60, 90}, {110, 90}}}, ""};
    EXPECT_NE(sample::only_finding(pattern).message.find("waist dart"), std::string::npos);
}

}  // namespace
}  // namespace dartwright
