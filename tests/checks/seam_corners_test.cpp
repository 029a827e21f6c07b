// Corners of seams by what crosses there and how the pieces lie; notches that meet a corner; two folds;
// closed runs.

#include "dartwright/checks/seam_corners.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/checks/measure_line.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "sample_patterns.hpp"
#include "support/generated_seams.hpp"

namespace dartwright {
namespace {

using sample::checks_of;
using sample::line;
using Names = std::vector<std::string>;

/// A quadrangle with edges hem, side, top and centre, anticlockwise; the side leans by so much over its
/// height.
Piece quadrangle(const std::string& name, double lean) {
    Piece piece;
    piece.name = name;
    piece.cut = Cut{2, "", false, {}};
    piece.grain = Grain{{20, 20}, {20, 80}, ""};
    piece.outline.start = {0, 0};
    piece.outline.items = {line("hem", {100, 0}), line("side", {100 + lean, 100}), line("top", {0, 100}),
                           line("centre", {0, 0})};
    return piece;
}

Seam seam_of(const std::string& name, const SeamPart& first, const SeamPart& second) {
    Seam seam;
    seam.name = name;
    seam.joins = {SeamSide{first}, SeamSide{second}};
    return seam;
}

/// Two quadrangles sewn at their sides; the second leans as far the other way when `lean_back` is -`lean`.
Pattern joined_at_side(double lean, double lean_back) {
    Pattern pattern;
    pattern.name = "joined";
    pattern.pieces = {quadrangle("front", lean), quadrangle("back", lean_back)};
    pattern.seams = {seam_of("side", {"front", "side", "hem", false}, {"back", "side", "hem", false})};
    return pattern;
}

std::vector<std::pair<std::string, Severity>> told(const Pattern& pattern) {
    std::vector<std::pair<std::string, Severity>> out;
    for (const Finding& finding : check(pattern).findings) out.emplace_back(finding.check, finding.severity);
    return out;
}

constexpr double lean = 10;  // 100 mm high: 5.7 degrees

TEST(seam_corners, of_unsewn_edges_are_faults) {
    EXPECT_TRUE(told(joined_at_side(lean, -lean)).empty());
    const CheckReport report = check(joined_at_side(lean, lean));
    ASSERT_EQ(checks_of(report), (Names{"seam-corner", "seam-corner"}));
    // At the hem 90 + a twice, at the top 90 - a twice.
    const double a = degrees(std::atan2(lean, 100));
    EXPECT_NEAR(*report.findings[0].measured, 180 + 2 * a, 1e-9);
    EXPECT_NE(report.findings[0].message.find("hem cuts in at the seam"), std::string::npos)
        << report.findings[0].message;
    EXPECT_NEAR(*report.findings[1].measured, 180 - 2 * a, 1e-9);
    EXPECT_NE(report.findings[1].message.find("top juts out at the seam"), std::string::npos)
        << report.findings[1].message;
}

// What juts out of the joined piece encloses less than 180 degrees of cloth, whichever way it is drawn.
TEST(seam_corners, are_said_the_same_upside_down) {
    Pattern pattern = joined_at_side(lean, lean);
    const testing::Similarity turned{pi, 1, false, {}};
    for (Piece& piece : pattern.pieces) piece = testing::image(turned, piece);
    const CheckReport report = check(pattern);
    ASSERT_EQ(report.findings.size(), 2U);
    EXPECT_NE(report.findings[0].message.find("hem cuts in"), std::string::npos);
    EXPECT_NE(report.findings[1].message.find("top juts out"), std::string::npos);
}

TEST(seam_corners, of_edges_in_two_seams_are_notes_unless_said_smooth) {
    Pattern pattern = joined_at_side(lean, lean);
    pattern.pieces.push_back(quadrangle("front band", 0));
    pattern.pieces.push_back(quadrangle("back band", 0));
    pattern.seams.push_back(
        seam_of("front hem", {"front", "hem", "side", false}, {"front band", "hem", "side", false}));
    pattern.seams.push_back(
        seam_of("back hem", {"back", "hem", "side", false}, {"back band", "hem", "side", false}));
    pattern.seams[1].ends = pattern.seams[2].ends = {{"side", CornerIs::free}, {"centre", CornerIs::free}};
    CheckReport report = check(pattern);
    ASSERT_EQ(checks_of(report), (Names{"seam-corner", "seam-corner"}));
    EXPECT_EQ(report.findings[0].severity, Severity::note);   // the hem
    EXPECT_EQ(report.findings[1].severity, Severity::fault);  // the top, unsewn on both
    pattern.seams[0].ends = {{"hem", CornerIs::smooth}};
    EXPECT_EQ(check(pattern).findings[0].severity, Severity::fault);
    pattern.seams[0].ends = {{"hem", CornerIs::free}};
    EXPECT_EQ(check(pattern).findings.size(), 1U);
    // One sewn and one not.
    pattern.seams[0].ends.clear();
    pattern.seams.pop_back();
    EXPECT_EQ(check(pattern).findings[0].severity, Severity::note);
}

TEST(seam_corners, of_parts_of_one_side_of_a_seam_are_faults) {
    Pattern pattern = joined_at_side(lean, lean);
    Piece band = quadrangle("band", 0);
    band.outline.items = {line("hem", {200, 0}), line("side", {200, 100}), line("top", {0, 100}),
                          line("centre", {0, 0})};
    pattern.pieces.push_back(band);
    Seam hem;
    hem.name = "hem";
    hem.joins = {SeamSide{{"front", "hem", "centre", false}, {"back", "hem", "side", false}},
                 SeamSide{{"band", "hem", "centre", false}}};
    hem.ends = {{"centre", CornerIs::free}};
    pattern.seams.push_back(hem);
    const CheckReport report = check(pattern);
    ASSERT_EQ(checks_of(report), (Names{"seam-corner", "seam-corner"}));
    for (const Finding& finding : report.findings) EXPECT_EQ(finding.severity, Severity::fault);
}

TEST(seam_corners, laid_on_each_other_are_equal) {
    // Two of one shape, as upper and under collar: three faults if they were opened flat.
    Pattern pattern = joined_at_side(lean, lean);
    pattern.seams[0].laid = LaidAs::on_each_other;
    EXPECT_TRUE(told(pattern).empty());
    pattern = joined_at_side(lean, -lean);
    pattern.seams[0].laid = LaidAs::on_each_other;
    const CheckReport report = check(pattern);
    ASSERT_EQ(checks_of(report), (Names{"seam-corner", "seam-corner"}));
    const double a = degrees(std::atan2(lean, 100));
    EXPECT_NEAR(std::abs(*report.findings[0].difference), 2 * a, 1e-9);
    EXPECT_NE(report.findings[0].message.find("do not lie on each other"), std::string::npos);
}

// Faced front and back: shoulder seams of the outer and of the inner pieces match, and are asked to.
TEST(seam_corners, laid_on_each_other_in_matching_seams_are_asked_to_be_equal) {
    for (const double of_facing : {lean, -lean}) {
        Pattern pattern;
        pattern.name = "faced";
        pattern.pieces = {quadrangle("front", lean), quadrangle("back", -lean),
                          quadrangle("front facing", of_facing), quadrangle("back facing", -of_facing)};
        pattern.seams = {
            seam_of("side", {"front", "side", "hem", false}, {"back", "side", "hem", false}),
            seam_of("facing side", {"front facing", "side", "hem", false},
                    {"back facing", "side", "hem", false}),
            seam_of("front hem", {"front", "hem", "side", false}, {"front facing", "hem", "side", false}),
            seam_of("back hem", {"back", "hem", "side", false}, {"back facing", "hem", "side", false})};
        pattern.seams[2].laid = pattern.seams[3].laid = LaidAs::on_each_other;
        if (of_facing == lean) {
            EXPECT_TRUE(told(pattern).empty());
            continue;
        }
        const auto faults = told(pattern);
        EXPECT_EQ(faults.size(), 2U);
        for (const auto& [name, severity] : faults) {
            EXPECT_EQ(name, "seam-corner");
            EXPECT_EQ(severity, Severity::fault);
        }
    }
}

// The facings are sewn to each other at their centres, front and back at their sides: the same pieces, but
// what the front's side is sewn to and what the facing's centre is sewn to come together nowhere.
TEST(seam_corners, laid_on_each_other_in_seams_of_the_same_pieces_that_do_not_match_are_notes) {
    Pattern pattern;
    pattern.name = "faced askew";
    pattern.pieces = {quadrangle("front", lean), quadrangle("back", -lean), quadrangle("front facing", 0),
                      quadrangle("back facing", -lean)};
    pattern.seams = {
        seam_of("side", {"front", "side", "hem", false}, {"back", "side", "hem", false}),
        seam_of("facing centre", {"front facing", "centre", "hem", false},
                {"back facing", "centre", "hem", false}),
        seam_of("front hem", {"front", "hem", "side", false}, {"front facing", "hem", "centre", false}),
        seam_of("back hem", {"back", "hem", "side", false}, {"back facing", "hem", "side", false})};
    pattern.seams[2].laid = pattern.seams[3].laid = LaidAs::on_each_other;
    using Told = std::vector<std::pair<std::string, Severity>>;
    EXPECT_EQ(told(pattern), (Told{{"seam-corner", Severity::note}}));
    // Laid so that the back's side lies on its facing's centre too, the two match.
    pattern.seams[3].joins[1][0].from = "centre";
    pattern.pieces[3] = quadrangle("back facing", 0);
    const Told matching = told(pattern);
    const std::pair<std::string, Severity> fault{"seam-corner", Severity::fault};
    EXPECT_EQ(std::count(matching.begin(), matching.end(), fault), 2);
}

RC_GTEST_PROP(SeamCorners, OfAnyPieceOnItsOwnCopyAreTrue, ()) {
    Pattern pattern = testing::any_seam().pattern;
    Piece copy = pattern.pieces[0];
    copy.name = "copy";
    const testing::Similarity s{testing::real_between(-3, 3), 1, *rc::gen::arbitrary<bool>(), {50, -20}};
    pattern.pieces[1] = testing::image(s, copy);
    pattern.seams.clear();
    for (const Run& run : runs_of(pattern.pieces[0].outline)) {
        Seam seam =
            seam_of(run.edge, {"first", run.edge, run.before, false}, {"copy", run.edge, run.before, false});
        seam.laid = LaidAs::on_each_other;
        pattern.seams.push_back(seam);
    }
    for (const Finding& finding : check(pattern).findings)
        RC_ASSERT(finding.check != "seam-corner" && finding.check != "seam-length" &&
                  finding.check != "notch-place");
}

RC_GTEST_PROP(SeamCorners, DoNotDependOnWhichSideIsWrittenFirst, ()) {
    Pattern pattern = testing::any_seam().pattern;
    if (*rc::gen::arbitrary<bool>()) pattern.seams[0].laid = LaidAs::on_each_other;
    Pattern turned = pattern;
    std::swap(turned.seams[0].joins[0], turned.seams[0].joins[1]);
    if (turned.seams[0].ease) turned.seams[0].ease->side = 3 - turned.seams[0].ease->side;
    // The verdict and the size; the place is on the first side, or on the inner piece.
    const auto corners = [](const Pattern& of) {
        std::vector<std::pair<double, Severity>> out;
        for (const Finding& finding : check(of).findings)
            if (finding.check == "seam-corner")
                out.emplace_back(std::abs(*finding.difference), finding.severity);
        std::sort(out.begin(), out.end());
        return out;
    };
    const auto a = corners(pattern);
    const auto b = corners(turned);
    RC_ASSERT(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        RC_ASSERT(std::abs(a[i].first - b[i].first) < 1e-9);
        RC_ASSERT(a[i].second == b[i].second);
    }
}

// A sleeve's notch meets the shoulder, where two armholes meet.
TEST(notches_at_corners, have_the_corner_for_a_partner) {
    Pattern pattern;
    pattern.name = "band on two";
    pattern.pieces = {quadrangle("front", 0), quadrangle("back", 0)};
    Piece band = quadrangle("band", 0);
    band.outline.items = {line("edge", {200, 0}), line("side", {200, 50}), line("top", {0, 50}),
                          line("centre", {0, 0})};
    pattern.pieces.push_back(band);
    Seam seam;
    seam.name = "band";
    seam.joins = {SeamSide{{"front", "hem", "centre", false}, {"back", "hem", "side", false}},
                  SeamSide{{"band", "edge", "centre", false}}};
    seam.ends = {{"centre", CornerIs::free}, {"side", CornerIs::free}};
    pattern.seams = {seam};
    pattern.pieces[2].notches = {{"edge", "centre", 100.4, NotchKind::single}};
    EXPECT_EQ(checks_of(check(pattern)), Names{});
    pattern.pieces[2].notches[0].at = 104;
    const CheckReport report = check(pattern);
    ASSERT_EQ(checks_of(report), Names{"notch-place"});
    EXPECT_NEAR(*report.findings[0].difference, 4, 1e-9);
    EXPECT_NE(report.findings[0].message.find("4.0 mm too far on"), std::string::npos)
        << report.findings[0].message;
    pattern.pieces[2].notches[0].at = 60;
    EXPECT_EQ(checks_of(check(pattern)), Names{"notch-missing"});
    // Beside notches that have partners of their own.
    pattern.pieces[2].notches = {{"edge", "centre", 50, NotchKind::single},
                                 {"edge", "centre", 100, NotchKind::single},
                                 {"edge", "centre", 150, NotchKind::double_}};
    pattern.pieces[0].notches = {{"hem", "centre", 50, NotchKind::single}};
    pattern.pieces[1].notches = {{"hem", "side", 50, NotchKind::double_}};
    EXPECT_EQ(checks_of(check(pattern)), Names{});
}

TEST(allowances, may_differ_where_it_is_said) {
    Pattern pattern = joined_at_side(0, 0);
    pattern.pieces[0].allowance = {{"side", 6.0}};
    pattern.pieces[1].allowance = {{"side", 18.0}};
    EXPECT_EQ(checks_of(check(pattern)), Names{"seam-allowance"});
    pattern.seams[0].allowances_differ = true;
    EXPECT_EQ(checks_of(check(pattern)), Names{});
}

/// A quarter of a circle of that radius: two folds and a hem.
Piece quarter(double radius) {
    const double k = 4.0 / 3 * (std::sqrt(2.0) - 1) * radius;  // the usual cubic, 0.03 % off the circle
    Piece piece;
    piece.name = "circle";
    piece.cut = Cut{1, "lengthwise", false, {}, "crosswise"};
    piece.grain = Grain{{20, 20}, {20, 80}, "lengthwise"};
    piece.outline.start = {0, 0};
    piece.outline.items = {line("crosswise", {radius, 0}),
                           sample::curve("hem", {0, radius}, {radius, k}, {k, radius}),
                           line("lengthwise", {0, 0})};
    return piece;
}

TEST(two_folds, of_a_quarter_circle_are_true) {
    Pattern pattern;
    pattern.name = "circle skirt";
    pattern.pieces = {quarter(300)};
    pattern.pieces[0].allowance = {{"hem", 10.0}};
    EXPECT_EQ(checks_of(check(pattern)), Names{});
    // The whole circle: the hem four times, a fold twice.
    EXPECT_NEAR(measure_line(pattern, "hem").total_mm, 2 * pi * 300, 0.0006 * 2 * pi * 300);
    EXPECT_NEAR(measure_line(pattern, "crosswise").total_mm, 600, 1e-9);
    // Nothing beyond either fold.
    for (const Point p : cutting_line(pattern.pieces[0]).points) {
        EXPECT_GE(p.x, -1e-6);
        EXPECT_GE(p.y, -1e-6);
    }
    EXPECT_THROW(lay_pattern(pattern, {1400, true, false, 5}), Impossible);
}

TEST(two_folds, that_are_not_square_to_each_other_are_one_finding) {
    Pattern pattern;
    pattern.name = "leaning";
    pattern.pieces = {quarter(300)};
    pattern.pieces[0].outline.items[0].to = {300, 30};
    pattern.pieces[0].outline.items[1] = line("hem", {0, 300});
    pattern.pieces[0].cut->ends = {{"hem", CornerIs::free}};
    EXPECT_EQ(checks_of(check(pattern)), Names{"fold-corner"});
}

TEST(folds, that_bow_are_one_finding) {
    Pattern pattern;
    pattern.name = "bowed";
    pattern.pieces = {sample::panel("front", "centre front")};
    pattern.pieces[0].grain->along.clear();
    pattern.pieces[0].outline.items[3] = sample::curve("centre front", {0, 0}, {-40, 300}, {-40, 100});
    EXPECT_EQ(checks_of(check(pattern)), Names{"fold-straight"});
}

/// A round of eight cubic arcs of one name about the origin, in the order in which they are walked.
Piece round_of(const std::string& name, double radius) {
    Piece piece;
    piece.name = name;
    piece.cut = Cut{};
    piece.grain = Grain{{0, -10}, {0, 10}, ""};
    const double step = pi / 4;
    const double k = 4.0 / 3 * std::tan(step / 4) * radius;
    piece.outline.start = {radius, 0};
    for (int i = 0; i < 8; ++i) {
        const double a = i * step;
        const double b = (i + 1) * step;
        const Point from{radius * std::cos(a), radius * std::sin(a)};
        const Point to = i == 7 ? piece.outline.start : Point{radius * std::cos(b), radius * std::sin(b)};
        piece.outline.items.push_back(sample::curve("rim", to, from + k * Vector{-std::sin(a), std::cos(a)},
                                                    to - k * Vector{-std::sin(b), std::cos(b)}));
    }
    return piece;
}

// A crown and the band that is sewn round it: notches are met from the notch at which the crown begins.
TEST(closed_runs, begin_at_the_notch_that_says_so) {
    Pattern pattern;
    pattern.name = "cap";
    pattern.pieces = {round_of("crown", 90)};
    const double rim = runs_of(pattern.pieces[0].outline)[0].length;
    Piece band = quadrangle("band", 0);
    band.outline.items = {line("edge", {rim, 0}), line("side", {rim, 50}), line("top", {0, 50}),
                          line("centre", {0, 0})};
    pattern.pieces.push_back(band);
    pattern.seams = {seam_of("crown", {"crown", "rim", "start", false}, {"band", "edge", "centre", false})};
    EXPECT_EQ(checks_of(check(pattern)), Names{});
    pattern.pieces[1].notches = {{"edge", "centre", 100, NotchKind::double_}};
    pattern.pieces[0].notches = {{"rim", "start", 200, NotchKind::single, true},
                                 {"rim", "start", 300, NotchKind::double_}};
    EXPECT_EQ(checks_of(check(pattern)), Names{});
    const SeamWalk walk = walk_seam(pattern, "crown");
    EXPECT_NEAR(walk.difference, 0, 1e-6);
    // Beyond its first item's end, and walked the other way.
    pattern.pieces[0].notches[0].at = rim - 40;
    pattern.pieces[0].notches[1].at = 60;
    EXPECT_EQ(checks_of(check(pattern)), Names{});
    pattern.seams[0].joins[0][0].from = "end";
    EXPECT_EQ(checks_of(check(pattern)), Names{"notch-place"});
    pattern.pieces[0].notches[1].at = rim - 140;
    EXPECT_EQ(checks_of(check(pattern)), Names{});
}

}  // namespace
}  // namespace dartwright
