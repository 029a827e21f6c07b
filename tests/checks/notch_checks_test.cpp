#include "dartwright/checks/notch_checks.hpp"

#include <gtest/gtest.h>

#include "checks/sample_patterns.hpp"

namespace dartwright {
namespace {

struct At {
    double mm;
    NotchKind kind = NotchKind::single;
};

std::vector<Notch> notches(const std::string& edge, const std::string& from, const std::vector<At>& places) {
    std::vector<Notch> list;
    for (const At& place : places) list.push_back({edge, from, place.mm, place.kind});
    return list;
}

Pattern notched(const std::vector<At>& front, const std::vector<At>& back) {
    Pattern pattern = sample::skirt();
    pattern.pieces[0].notches = notches("side", "hem", front);
    pattern.pieces[1].notches = notches("side", "hem", back);
    return pattern;
}

TEST(notch_place, is_measured_from_the_seam_s_end_whichever_end_the_notch_names) {
    Pattern pattern = notched({{150}}, {});
    pattern.pieces[1].notches = notches("side", "waist", {{250.5}});
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.pieces[1].notches = notches("side", "waist", {{247}});
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "notch-place");
    EXPECT_NEAR(finding.difference.value(), 3, 1e-9);
    EXPECT_NEAR(finding.at.value().y, 153, 1e-9);
    EXPECT_FALSE(check(pattern).seams[0].passed);
}

TEST(notch_place, may_lag_by_the_ease_and_no_more) {
    Pattern pattern = sample::skirt({200, 400}, {200, 410});
    pattern.seams[0].ease = Ease{2, 10, false};
    pattern.pieces[0].notches = notches("side", "hem", {{200}});
    for (const double ok : {199.5, 200.0, 205.0, 210.0, 210.9}) {
        pattern.pieces[1].notches = notches("side", "hem", {{ok}});
        EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{}) << ok;
    }
    pattern.pieces[1].notches = notches("side", "hem", {{212}});
    EXPECT_NEAR(sample::only_finding(pattern).difference.value(), 2, 1e-9);
    pattern.pieces[1].notches = notches("side", "hem", {{198}});
    EXPECT_NEAR(sample::only_finding(pattern).difference.value(), -2, 1e-9);
}

TEST(notch_place, beyond_the_end_of_its_run_is_left_out_of_the_pairing) {
    const Finding finding = sample::only_finding(notched({{100}}, {{100}, {405}}));
    EXPECT_EQ(finding.check, "notch-place");
    EXPECT_EQ(finding.piece, "back");
    EXPECT_NEAR(finding.difference.value(), 5, 1e-9);
    EXPECT_EQ(sample::checks_of(check(notched({{400}}, {{400.5}}))), sample::Names{});
}

TEST(notch_missing, pairs_so_that_the_total_distance_is_least) {
    const Pattern pattern = notched({{50}, {150}, {300}}, {{150.4}, {300}});
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "notch-missing");
    EXPECT_EQ(finding.piece, "back");
    EXPECT_NEAR(finding.expected.value(), 50, 1e-9);
    EXPECT_NEAR(finding.at.value().y, 50, 1e-9);
    EXPECT_NE(finding.remedy.find("50.0 mm from hem"), std::string::npos) << finding.remedy;
}

TEST(notch_missing, is_one_finding_each) {
    EXPECT_EQ(sample::checks_of(check(notched({}, {{50}, {60}}))),
              (sample::Names{"notch-missing", "notch-missing"}));
}

TEST(notch_kind, and_place_are_two_things) {
    EXPECT_EQ(sample::checks_of(check(notched({{50}}, {{55, NotchKind::triple}}))),
              (sample::Names{"notch-place", "notch-kind"}));
}

TEST(notches, on_a_side_of_several_parts_add_up) {
    Pattern pattern = sample::skirt({200, 400}, {100, 400});
    Piece yoke = sample::panel("yoke", "yoke fold", {300, 100});
    yoke.notches = notches("hem", "yoke fold", {{150}, {250}});
    pattern.pieces[0].notches = notches("waist", "centre front", {{150}});
    pattern.pieces[1].notches = notches("waist", "side", {{50}});
    pattern.pieces.push_back(yoke);
    Seam seam;
    seam.name = "yoke seam";
    seam.joins[0] = {{"front", "waist", "centre front", false}, {"back", "waist", "side", false}};
    seam.joins[1] = {{"yoke", "hem", "yoke fold", false}};
    pattern.seams.push_back(seam);
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(notches, of_an_edge_with_its_mirror_image_always_agree) {
    Pattern pattern = notched({{50}, {80, NotchKind::double_}}, {});
    pattern.pieces.pop_back();
    pattern.seams[0].joins[1] = {{"front", "side", "hem", true}};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(notch_in_dart, is_judged_along_the_edge_with_the_dart_closed) {
    Pattern pattern = sample::bodice();
    const double mouth = length_of_item(pattern.pieces[0].outline, 0);
    for (const double off : {-0.9, 0.0, 0.9}) {
        pattern.pieces[0].notches = notches("waist", "centre front", {{mouth + off}});
        const Finding finding = sample::only_finding(pattern);
        EXPECT_EQ(finding.check, "notch-in-dart");
        EXPECT_EQ(finding.dart, "waist dart");
        EXPECT_NEAR(finding.measured.value(), std::abs(off), 1e-6);
    }
    for (const double off : {-1.1, 1.1}) {
        pattern.pieces[0].notches = notches("waist", "centre front", {{mouth + off}});
        EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    }
}

TEST(notch_in_dart, knows_a_dart_in_the_corner) {
    Pattern pattern = sample::bodice();
    pattern.pieces[0].outline.items[2].as_edge()->edge = "side waist";
    pattern.pieces[0].notches = notches("side waist", "waist", {{0.4}});
    EXPECT_EQ(sample::only_finding(pattern).check, "notch-in-dart");
}

}  // namespace
}  // namespace dartwright
