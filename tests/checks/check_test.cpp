#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "checks/sample_patterns.hpp"
#include "geometry/generators.hpp"

namespace dartwright {
namespace {

// A pattern with every coordinate sent through `image`.
template <typename Image>
void send_points(Pattern& pattern, const Image& image) {
    const auto send = [&image](Point& p) { p = image(p); };
    for (Piece& piece : pattern.pieces) {
        if (piece.grain) {
            send(piece.grain->from);
            send(piece.grain->to);
        }
        send(piece.outline.start);
        for (OutlineItem& item : piece.outline.items) {
            send(item.to);
            if (DartItem* dart = item.as_dart()) {
                send(dart->point);
                if (dart->pivot) send(*dart->pivot);
                continue;
            }
            if (CubicShape* cubic = std::get_if<CubicShape>(&item.as_edge()->shape)) {
                for (Point& control : cubic->controls) send(control);
            }
        }
    }
}

// What a finding says, apart from where; in an order that does not hang on the outline's direction.
struct Said {
    std::string check, piece, edge, dart, seam;
    std::optional<double> measured, difference;
};
std::vector<Said> said(const CheckReport& report) {
    std::vector<Said> all;
    for (const Finding& f : report.findings) {
        all.push_back({f.check, f.piece, f.edge, f.dart, f.seam, f.measured, f.difference});
    }
    std::sort(all.begin(), all.end(), [](const Said& a, const Said& b) {
        return std::tie(a.check, a.piece, a.edge, a.dart, a.seam, a.measured) <
               std::tie(b.check, b.piece, b.edge, b.dart, b.seam, b.measured);
    });
    return all;
}
// To 1e-6 mm or degrees: coordinates of 1e4 mm carry angles over stretches of 1 mm to about 1e-10.
bool is_near(const std::optional<double>& a, const std::optional<double>& b) {
    return a.has_value() == b.has_value() && (!a || std::abs(std::abs(*a) - std::abs(*b)) < 1e-6);
}
bool are_same(const std::vector<Said>& a, const std::vector<Said>& b) {
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(), [](const Said& x, const Said& y) {
               return std::tie(x.check, x.piece, x.edge, x.dart, x.seam) ==
                          std::tie(y.check, y.piece, y.edge, y.dart, y.seam) &&
                      is_near(x.measured, y.measured) && is_near(x.difference, y.difference);
           });
}

// A skirt and a bodice with faults of seeded sizes in most families.
Pattern faulty() {
    Pattern pattern = sample::bodice();
    Pattern skirt = sample::skirt({200, 400}, {200, *generated::real(402, 430)});
    pattern.pieces.insert(pattern.pieces.end(), skirt.pieces.begin(), skirt.pieces.end());
    pattern.pieces[0].name = "bodice";
    pattern.seams = skirt.seams;
    DartItem& dart = sample::dart_of_bodice(pattern);
    dart.point.x += *generated::real(5, 12);
    pattern.pieces[0].outline.items[2] = sample::line("waist", {200, *generated::real(5, 15)});
    pattern.pieces[1].outline.items[2].to.y += *generated::real(8, 20);  // fold corner and seam corner
    pattern.pieces[1].notches = {{"side", "hem", *generated::real(50, 150), NotchKind::single}};
    pattern.pieces[2].notches = {{"side", "waist", *generated::real(50, 150), NotchKind::double_}};
    pattern.pieces[2].grain->to.x += *generated::real(4, 30);
    pattern.pieces[0].grain.reset();
    pattern.pieces[2].cut->fold.clear();
    return pattern;
}

RC_GTEST_PROP(check, finds_the_same_in_turned_and_shifted_copies, ()) {
    const Pattern pattern = faulty();
    const std::vector<Said> before = said(check(pattern));
    RC_ASSERT(before.size() >= 6);
    Pattern copy = pattern;
    const Motion motion = *generated::motion(5000);
    send_points(copy, [&motion](Point p) { return apply(motion, p); });
    RC_ASSERT(are_same(before, said(check(copy))));
}

RC_GTEST_PROP(check, finds_the_same_in_a_mirror_image, ()) {
    const Pattern pattern = faulty();
    Pattern copy = pattern;
    send_points(copy, [](Point p) { return Point{-p.x, p.y}; });
    for (Piece& piece : copy.pieces) piece.outline = reversed(piece.outline);
    const std::vector<Said> mirrored = said(check(copy));
    // B and A change places, so that the leg measured is the other one.
    std::vector<Said> expected = said(check(pattern));
    RC_ASSERT(mirrored.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        if (expected[i].check == "dart-legs") expected[i].measured = mirrored[i].measured;
    }
    RC_ASSERT(are_same(expected, mirrored));
}

RC_GTEST_PROP(check, finds_the_same_after_a_way_through_inches, ()) {
    Pattern pattern = faulty();
    const std::vector<Said> before = said(check(pattern));
    pattern.unit = Unit::inch;
    RC_ASSERT(are_same(before, said(check(read_pattern(write_pattern(pattern), "inches")))));
}

TEST(check, puts_findings_in_the_order_of_the_list_then_of_pieces) {
    Pattern pattern = sample::skirt();
    for (Piece& piece : pattern.pieces) {
        piece.grain.reset();
        piece.cut.reset();
    }
    const CheckReport report = check(pattern);
    EXPECT_EQ(sample::checks_of(report),
              (sample::Names{"grain-missing", "grain-missing", "cut-missing", "cut-missing"}));
    ASSERT_EQ(report.findings.size(), 4u);
    EXPECT_EQ(report.findings[0].piece, "front");
    EXPECT_EQ(report.findings[1].piece, "back");
    EXPECT_FALSE(report.passed);
}

TEST(check, passes_with_notes_alone) {
    Pattern pattern = sample::skirt();
    pattern.pieces[0].allowance = {{"side", 15.0}};
    const CheckReport report = check(pattern);
    ASSERT_EQ(report.findings.size(), 1u);
    EXPECT_TRUE(report.passed);
}

TEST(check, uses_the_pattern_s_tolerances_unless_given_others) {
    Pattern pattern = sample::skirt({200, 400}, {200, 403});
    EXPECT_FALSE(check(pattern).passed);
    EXPECT_TRUE(check(pattern,
                      [] {
                          Tolerances wide;
                          wide.seam_mm = 3.5;
                          return wide;
                      }())
                    .passed);
    pattern.tolerances["seam"] = 3.5;
    EXPECT_TRUE(check(pattern).passed);
}

TEST(check, gives_the_figures_of_darts_and_seams) {
    Pattern pattern = sample::bodice();
    sample::dart_of_bodice(pattern).pivot = {100, 170};
    const CheckReport report = check(pattern);
    ASSERT_EQ(report.darts.size(), 1u);
    EXPECT_EQ(report.darts[0].name, "waist dart");
    EXPECT_NEAR(report.darts[0].legs[0], std::hypot(20, 150), 1e-9);
    EXPECT_NEAR(report.darts[0].intake, 40, 1e-9);
    EXPECT_NEAR(report.darts[0].angle_deg, degrees(2 * std::atan2(20, 170)), 1e-9);
    EXPECT_TRUE(report.darts[0].passed);
}

TEST(check, of_a_seam_that_names_nothing_says_what_exists) {
    Pattern pattern = sample::skirt();
    pattern.seams[0].joins[1][0].from = "neck";
    EXPECT_THROW(check(pattern), UnsoundPattern);
    pattern.seams[0].joins[1][0].piece = "sleeve";
    EXPECT_THROW(check(pattern), UnsoundPattern);
}

TEST(check, of_an_empty_pattern_is_refused) {
    EXPECT_THROW(check(Pattern{}), UnsoundPattern);
}

TEST(check, does_not_fall_over_darts_without_legs) {
    Pattern pattern = sample::bodice();
    sample::dart_of_bodice(pattern).point = {80, 0};
    const CheckReport report = check(pattern);
    EXPECT_FALSE(report.passed);
}

TEST(workshop, patterns_are_true) {
    for (const char* name : {"workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json"}) {
        EXPECT_EQ(sample::checks_of(check(sample::fixture(name))), sample::Names{}) << name;
    }
}

}  // namespace
}  // namespace dartwright
