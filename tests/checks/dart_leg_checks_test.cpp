// The legs of darts: of the outline's and of those with two points inside a piece.

#include "dartwright/checks/dart_leg_checks.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "checks/sample_patterns.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using sample::dart_of_bodice;
using sample::Names;

TEST(dart_legs, tells_both_lengths) {
    Pattern pattern = sample::bodice();
    dart_of_bodice(pattern).point = {103, 150};
    const Finding finding = sample::only_finding(pattern);
    EXPECT_EQ(finding.check, "dart-legs");
    EXPECT_EQ(finding.dart, "waist dart");
    EXPECT_NEAR(finding.expected.value(), std::hypot(23, 150), 1e-9);
    EXPECT_NEAR(finding.measured.value(), std::hypot(17, 150), 1e-9);
    EXPECT_NEAR(finding.difference.value(), std::hypot(17, 150) - std::hypot(23, 150), 1e-9);
    EXPECT_FALSE(check(pattern).darts[0].passed);
}

TEST(dart_legs, judges_the_distances_to_a_pivot_of_its_own) {
    Pattern pattern = sample::bodice();
    dart_of_bodice(pattern).pivot = {104, 170};
    const Finding finding = sample::only_finding(pattern);  // and not dart-point for the bisector
    EXPECT_EQ(finding.check, "dart-legs");
    EXPECT_NEAR(finding.measured.value(), std::hypot(16, 170), 1e-9);
    EXPECT_NE(finding.message.find("pivot"), std::string::npos);
}

TEST(dart_legs, along_curves_are_arc_lengths) {
    Pattern pattern = sample::bodice();
    // One leg straight, the other bent by 15 mm: as long a chord, a longer leg.
    dart_of_bodice(pattern).legs = {{{{{86, 50}, {94, 100}}}, {{{115, 100}, {130, 50}}}}};
    const std::vector<std::string> checks = sample::checks_of(check(pattern));
    EXPECT_EQ(checks, sample::Names{"dart-legs"});
}

// The bodice with its dart's legs bent, the first by `first_mm` and the second by `second_mm` towards the
// outside of the dart, each like a bow.
Pattern with_bent_legs(double first_mm, double second_mm) {
    Pattern pattern = sample::bodice();
    DartItem& dart = dart_of_bodice(pattern);
    const Point a{80, 0};
    const Point b{120, 0};
    const Vector up = dart.point - a;
    const Vector down = b - dart.point;
    const Vector out_a = unit(perpendicular(up));
    const Vector out_b = unit(perpendicular(down));
    // The middle of the bow lies three quarters as far out as its controls.
    dart.legs = {{{{a + up / 3 + first_mm / 0.75 * out_a, a + 2 * up / 3 + first_mm / 0.75 * out_a}},
                  {{dart.point + down / 3 + second_mm / 0.75 * out_b,
                    dart.point + 2 * down / 3 + second_mm / 0.75 * out_b}}}};
    return pattern;
}

Finding finding_on_legs(const Pattern& pattern) {
    const CheckReport report = check(pattern);
    std::vector<Finding> found;
    for (const Finding& finding : report.findings) {
        if (finding.check == "dart-legs") found.push_back(finding);
    }
    EXPECT_EQ(found.size(), 1u) << ::testing::PrintToString(sample::checks_of(report));
    return found.empty() ? Finding{} : found[0];
}

bool has_finding_on_legs(const Pattern& pattern) {
    for (const std::string& name : sample::checks_of(check(pattern))) {
        if (name == "dart-legs") return true;
    }
    return false;
}

TEST(dart_legs, curved_and_of_one_length_but_not_alike_are_a_note) {
    // Bent to the same side of the piece by 6 mm: folded on the centre line the two bows lie away from each
    // other, 12 mm at their middles.
    const Pattern pattern = with_bent_legs(6, -6);
    const Finding finding = finding_on_legs(pattern);
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.dart, "waist dart");
    EXPECT_NEAR(finding.measured.value(), 12, 0.02);
    EXPECT_NEAR(finding.difference.value(), 12, 0.02);
    EXPECT_EQ(finding.allowed.value(), 0.5);
    EXPECT_NE(finding.message.find("12.0 mm apart"), std::string::npos) << finding.message;
    EXPECT_FALSE(finding.remedy.empty());
    EXPECT_TRUE(check(pattern).darts[0].passed);
    EXPECT_FALSE(has_finding_on_legs(with_bent_legs(6, 6)));       // the twin, bent alike
    EXPECT_FALSE(has_finding_on_legs(with_bent_legs(0.2, -0.2)));  // 0.4 mm apart
}

TEST(dart_legs, of_two_lengths_are_one_fault_and_no_note) {
    const Finding finding = finding_on_legs(with_bent_legs(20, -2));
    EXPECT_EQ(finding.severity, Severity::fault);
    EXPECT_EQ(finding.message.find("mirror"), std::string::npos);
}

TEST(dart_legs, of_a_tuck_are_compared_as_far_as_it_is_stitched) {
    Pattern pattern = with_bent_legs(6, -6);
    dart_of_bodice(pattern).stitched = 10;
    const double near_the_mouth = finding_on_legs(pattern).measured.value();
    EXPECT_GT(near_the_mouth, 0.5);
    EXPECT_LT(near_the_mouth, 4);
}

TEST(dart_legs, bent_to_the_point_itself_are_no_reason_to_fall_over) {
    Pattern pattern = with_bent_legs(6, -6);
    dart_of_bodice(pattern).point = {80, 0};
    EXPECT_NO_THROW(check(pattern));
}

DoubleDart fish() {
    return {"fish", {40, 60}, {40, 260}, {{{30, 160}, {50, 160}}}, ""};
}

Pattern with_double_dart(const DoubleDart& dart) {
    Pattern pattern = sample::bodice();
    pattern.pieces[0].double_darts = {dart};
    return pattern;
}

TEST(dart_legs, of_a_dart_with_two_points_are_one_length_at_each) {
    DoubleDart dart = fish();
    EXPECT_EQ(sample::checks_of(check(with_double_dart(dart))), Names{});
    dart.widest[0] = {24, 160};  // at the same height: the legs to both points are the longer
    const Finding finding = sample::only_finding(with_double_dart(dart));
    EXPECT_EQ(finding.check, "dart-legs");
    EXPECT_EQ(finding.severity, Severity::fault);
    EXPECT_EQ(finding.dart, "fish");
    EXPECT_NEAR(finding.expected.value(), std::hypot(16, 100), 1e-9);
    EXPECT_NEAR(finding.measured.value(), std::hypot(10, 100), 1e-9);
    EXPECT_NEAR(finding.difference.value(), std::hypot(10, 100) - std::hypot(16, 100), 1e-9);
    EXPECT_EQ(finding.at.value(), (Point{50, 160}));
    EXPECT_NE(finding.message.find("101.3 mm and 100.5 mm from its point `from`, 0.77 mm apart"),
              std::string::npos)
        << finding.message;
    EXPECT_NE(finding.message.find("from its point `to`, 0.77 mm apart"), std::string::npos);
}

TEST(dart_legs, of_a_dart_with_two_points_are_judged_at_the_worse_one) {
    DoubleDart dart = fish();
    dart.widest[1] = {50, 150};  // nearer to `from`
    dart.to = {40, 360};
    const Finding finding = finding_on_legs(with_double_dart(dart));
    // From `from` 100.5 and 90.6, from `to` 200.2 and 210.2.
    EXPECT_NEAR(finding.expected.value(), std::hypot(10, 200), 1e-9);
    EXPECT_NEAR(finding.measured.value(), std::hypot(10, 210), 1e-9);
}

testing::Similarity any_turn() {
    testing::Similarity turned;
    turned.angle = testing::real_between(0, 2 * pi);
    turned.is_reflected = *rc::gen::arbitrary<bool>();
    turned.shift = {testing::real_between(-2000, 2000), testing::real_between(-2000, 2000)};
    return turned;
}

// A generated measure may lie on the tolerance to a rounding; it is kept clear of it.
void keep_clear_of_tolerance(double measured_mm) {
    RC_PRE(std::abs(measured_mm - Tolerances{}.legs_mm) > 1e-6);
}

void expect_same_verdict(const CheckReport& before, const CheckReport& after) {
    RC_ASSERT(before.findings.size() == after.findings.size());
    for (std::size_t i = 0; i < before.findings.size(); ++i) {
        const Finding& a = before.findings[i];
        const Finding& b = after.findings[i];
        RC_ASSERT(a.check == b.check && a.dart == b.dart && a.severity == b.severity);
        RC_ASSERT(a.difference.has_value() == b.difference.has_value());
        // Coordinates of some 3,000 mm carry lengths to about 1e-12 mm, and arc lengths to 1e-7 mm.
        if (a.difference) RC_ASSERT(std::abs(std::abs(*a.difference) - std::abs(*b.difference)) < 1e-5);
    }
}

Pattern in_inches(Pattern pattern) {
    pattern.unit = Unit::inch;
    return read_pattern(write_pattern(pattern), "inches");
}

RC_GTEST_PROP(dart_legs, of_darts_with_two_points_are_judged_alike_in_turned_and_mirrored_copies, ()) {
    DoubleDart dart = fish();
    for (Point* p : {&dart.from, &dart.to, &dart.widest[0], &dart.widest[1]}) {
        *p = *p + Vector{testing::real_between(-1, 1), testing::real_between(-1, 1)};
    }
    const std::array<double, 4> legs = leg_lengths(dart);
    keep_clear_of_tolerance(std::abs(legs[1] - legs[0]));
    keep_clear_of_tolerance(std::abs(legs[3] - legs[2]));
    const Pattern pattern = with_double_dart(dart);
    Pattern copy = pattern;
    copy.pieces[0] = image(any_turn(), copy.pieces[0]);
    expect_same_verdict(check(pattern), check(copy));
    std::swap(dart.from, dart.to);
    std::swap(dart.widest[0], dart.widest[1]);
    expect_same_verdict(check(pattern), check(with_double_dart(dart)));
    expect_same_verdict(check(pattern), check(in_inches(pattern)));
}

RC_GTEST_PROP(dart_legs, that_are_curved_are_judged_alike_in_turned_and_mirrored_copies, ()) {
    const double first = testing::real_between(-6, 6);
    const Pattern pattern = with_bent_legs(first, *rc::gen::element(1, -1) * first);
    for (const Finding& finding : check(pattern).findings) keep_clear_of_tolerance(*finding.measured);
    Pattern copy = pattern;
    copy.pieces[0] = image(any_turn(), copy.pieces[0]);
    expect_same_verdict(check(pattern), check(copy));
    expect_same_verdict(check(pattern), check(in_inches(pattern)));
}

RC_GTEST_PROP(dart_legs, that_mirror_each_other_give_no_note, ()) {
    Pattern pattern = sample::bodice();
    DartItem& dart = dart_of_bodice(pattern);
    const auto near = [&](double share) {
        return between(Point{80, 0}, dart.point, share) +
               Vector{testing::real_between(-15, 15), testing::real_between(-15, 15)};
    };
    const std::array<Point, 2> up{near(0.3), near(0.7)};
    const auto across = [](Point p) { return Point{200 - p.x, p.y}; };  // the dart stands on x = 100
    dart.legs = {{up, {across(up[1]), across(up[0])}}};
    RC_ASSERT(!has_finding_on_legs(pattern));
}

}  // namespace
}  // namespace dartwright
