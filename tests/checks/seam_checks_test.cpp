#include "dartwright/checks/seam_checks.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "checks/sample_patterns.hpp"
#include "geometry/generators.hpp"

namespace dartwright {
namespace {

using sample::curve;
using sample::line;

TEST(seam_length, tells_who_is_longer_and_by_how_much) {
    const Pattern pattern = sample::skirt({200, 201}, {200, 203.3});
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "seam-length");
    EXPECT_EQ(finding.seam, "side");
    EXPECT_EQ(finding.piece, "back");
    EXPECT_NEAR(finding.difference.value(), 2.3, 1e-9);
    EXPECT_EQ(finding.message,
              "side: back is 2.3 mm longer than front (front 201.0 mm, back 203.3 mm, ease 0).");
    const CheckReport report = check(pattern);
    EXPECT_FALSE(report.seams[0].passed);
    EXPECT_NEAR(report.seams[0].lengths.value()[1], 203.3, 1e-9);
}

// 2 mm of 6, 9 of 6, and the eased side shorter than the other.
TEST(seam_length, says_how_much_of_the_ease_is_there) {
    const auto message = [](double back) {
        Pattern pattern = sample::skirt({200, 400}, {200, back});
        pattern.seams[0].ease = Ease{2, 6, false};
        return sample::only_finding(pattern).message;
    };
    EXPECT_EQ(message(402),
              "side: back is only 2.0 mm longer than front; 6.0 mm of ease was meant: 4.0 mm too "
              "little (front 400.0 mm, back 402.0 mm).");
    EXPECT_EQ(message(409),
              "side: back is 9.0 mm longer than front; 6.0 mm of ease was meant: 3.0 mm too much "
              "(front 400.0 mm, back 409.0 mm).");
    EXPECT_EQ(message(399),
              "side: back is 1.0 mm shorter than front; 6.0 mm of ease was meant: 7.0 mm too "
              "little (front 400.0 mm, back 399.0 mm).");
}

TEST(seam_length, allows_for_the_ease_on_its_side) {
    Pattern pattern = sample::skirt({200, 400}, {200, 406});
    pattern.seams[0].ease = Ease{2, 6, false};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.seams[0].ease = Ease{1, 6, false};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_NEAR(finding.difference.value(), 12, 1e-9);
    EXPECT_EQ(check(pattern).seams[0].ease, -6);
}

TEST(seam_length, takes_fullness_off) {
    Pattern pattern = sample::skirt({200, 400}, {200, 430});
    pattern.pieces[1].outline.items[1].as_edge()->fullness = 30;
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

RC_GTEST_PROP(seam_length, a_seeded_difference_is_reported_with_its_amount, ()) {
    const double height = *generated::real(50, 800);
    const double seeded = *generated::real(-40, 40);
    Pattern pattern = sample::skirt({200, height}, {120, height + 60 + seeded});
    pattern.seams[0].ease = Ease{2, 60, false};
    const CheckReport report = check(pattern);
    if (std::abs(seeded) > 1 + 1e-9) {
        RC_ASSERT(sample::checks_of(report) == sample::Names{"seam-length"});
        RC_ASSERT(std::abs(report.findings[0].difference.value() - seeded) < 1e-9);
    } else if (std::abs(seeded) < 1 - 1e-9) {
        RC_ASSERT(report.findings.empty());
    }
    RC_ASSERT(std::abs(report.seams[0].difference.value() - seeded) < 1e-9);
}

// A front whose hem reaches the side lower or higher by an angle, straight there and square at the fold.
Pattern sloped(double front_deg, double back_deg) {
    Pattern pattern = sample::skirt();
    for (std::size_t i = 0; i < 2; ++i) {
        const double slope = std::tan(radians(i == 0 ? front_deg : back_deg));
        pattern.pieces[i].outline.items[0] = curve("hem", {200, 0}, {70, 0}, {130, -70 * slope});
    }
    return pattern;
}

TEST(seam_corner, adds_the_two_angles) {
    const Finding finding = sample::only_finding(sloped(3, 2));
    EXPECT_EQ(finding.check, "seam-corner");
    EXPECT_NEAR(finding.measured.value(), 185, 1e-9);
    EXPECT_EQ(finding.at.value(), (Point{200, 0}));
    EXPECT_EQ(sample::checks_of(check(sloped(3, -3))), sample::Names{});
}

TEST(seam_corner, is_let_off_where_the_end_is_free) {
    Pattern pattern = sloped(30, 10);
    pattern.seams[0].ends["waist"] = CornerIs::free;  // the other end
    EXPECT_EQ(sample::only_finding(pattern).check, "seam-corner");
    pattern.seams[0].ends["hem"] = CornerIs::free;
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.seams[0].ends["hem"] = CornerIs::smooth;
    EXPECT_EQ(sample::only_finding(pattern).check, "seam-corner");
}

TEST(seam_corner, of_an_edge_with_its_mirror_image_is_doubled) {
    Pattern pattern = sloped(3, 0);
    pattern.pieces.pop_back();
    pattern.seams[0].joins[1] = {{"front", "side", "hem", true}};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "seam-corner");
    EXPECT_NEAR(finding.measured.value(), 186, 1e-9);
}

// A front with a dart of 10 degrees in the corner of side and waist; the side reaches it at a heading, and
// the back's side is as long.
Pattern darted_corner(double heading_deg) {
    Pattern pattern = sample::skirt();
    Outline& outline = pattern.pieces[0].outline;
    DartItem dart = sample::waist_dart();
    dart.point = {100, 250};
    const double leg = 150 * std::sqrt(2.0);
    const auto mouth_end = [leg](double degrees_up) {
        return Point{100 + leg * std::cos(radians(degrees_up)), 250 + leg * std::sin(radians(degrees_up))};
    };
    const Vector heading{std::cos(radians(heading_deg)), std::sin(radians(heading_deg))};
    outline.items[1] = curve("side", mouth_end(35), {200, 100}, mouth_end(35) - 60 * heading);
    outline.items.insert(outline.items.begin() + 2, {dart, mouth_end(45)});
    outline.items[3] = line("waist", {0, 400});
    pattern.pieces[1] = sample::panel("back", "centre back", {200, length_of_item(outline, 1)});
    return pattern;
}

TEST(seam_corner, with_a_dart_in_it_is_judged_closed) {
    EXPECT_EQ(sample::checks_of(check(darted_corner(80))), sample::Names{});
    const Finding finding = sample::only_finding(darted_corner(90));
    EXPECT_EQ(finding.check, "seam-corner");
    EXPECT_NEAR(finding.measured.value_or(0), 190, 1e-9);
}

// A yoke joined to two panels side by side.
Pattern yoke_and_panels(double lean_deg) {
    Pattern pattern = sample::skirt();
    Piece yoke = sample::panel("yoke", "centre front", {400, 100});
    yoke.cut->fold.clear();
    yoke.cut->quantity = 2;
    for (Piece& piece : pattern.pieces) piece.cut = yoke.cut;
    // The back's side leans, and its waist stays as wide.
    Outline& back = pattern.pieces[1].outline;
    const double lean = 400 * std::tan(radians(lean_deg));
    back.items[0].to = {200 - lean, 0};
    pattern.pieces.push_back(yoke);
    Seam seam;
    seam.name = "yoke seam";
    seam.joins[0] = {{"front", "waist", "centre front", false}, {"back", "waist", "side", false}};
    seam.joins[1] = {{"yoke", "hem", "centre front", false}};
    pattern.seams = {seam};
    return pattern;
}

TEST(seam_corner, between_two_parts_of_a_side_is_judged) {
    EXPECT_EQ(sample::checks_of(check(yoke_and_panels(0))), sample::Names{});
    const Finding finding = sample::only_finding(yoke_and_panels(5));
    EXPECT_EQ(finding.check, "seam-corner");
    EXPECT_EQ(finding.at.value(), (Point{200, 400}));
    EXPECT_NEAR(finding.measured.value(), 175, 1e-9);
}

TEST(seam_corner, between_two_parts_is_left_to_the_seam_that_ends_there) {
    Pattern pattern = yoke_and_panels(5);
    pattern.seams.push_back(sample::side_seam());
    // The side seam judges that corner and its own other end, once each.
    std::size_t at_waist = 0;
    for (const Finding& finding : check(pattern).findings) {
        if (finding.check != "seam-corner") continue;
        EXPECT_EQ(finding.seam, "side");
        if (finding.at == Point{200, 400}) ++at_waist;
    }
    EXPECT_EQ(at_waist, 1u);
}

TEST(seam_allowance, compares_widths_and_notes_what_is_not_decided) {
    Pattern pattern = sample::skirt();
    pattern.pieces[0].allowance = {{"side", 15.0}};
    const Finding note = sample::only_finding(pattern);
    EXPECT_EQ(note.check, "seam-allowance");
    EXPECT_EQ(note.severity, Severity::note);
    EXPECT_TRUE(check(pattern).seams[0].passed);
    pattern.pieces[1].allowance = {{"side", 0.0}};  // which is decided
    const Finding fault = sample::only_finding(pattern);
    EXPECT_EQ(fault.severity, Severity::fault);
    EXPECT_EQ(fault.difference.value(), -15);
    EXPECT_FALSE(check(pattern).seams[0].passed);
    pattern.pieces[1].allowance = {{"side", 15.05}};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

TEST(seam_allowance, compares_stretches_along_the_walk) {
    Pattern pattern = sample::skirt();
    using Stretches = std::vector<AllowanceStretch>;
    pattern.pieces[0].allowance = {{"side", Stretches{{"hem", 0, 100, 30}, {"hem", 100, 400, 15}}}};
    // The same, measured from the other end and in the other order.
    pattern.pieces[1].allowance = {{"side", Stretches{{"waist", 0, 300, 15}, {"waist", 300, 400, 30}}}};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
    pattern.pieces[1].allowance = {{"side", Stretches{{"waist", 0, 250, 15}, {"waist", 250, 400, 30}}}};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_NEAR(finding.at.value().y, 100, 1e-9);
    EXPECT_EQ(finding.measured.value(), 30);
    EXPECT_EQ(finding.expected.value(), 15);
    pattern.pieces[1].allowance = {{"side", Stretches{{"waist", 0, 300.5, 15}, {"waist", 300.5, 400, 30}}}};
    EXPECT_EQ(sample::checks_of(check(pattern)), sample::Names{});
}

}  // namespace
}  // namespace dartwright
