// Outlines that a cutter seldom draws and a program easily trips over: one edge all round a piece, darts at
// the outline's start, darts side by side, a dart at the corner of the fold.

#include <gtest/gtest.h>

#include "checks/sample_patterns.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

using sample::line;
using sample::Names;

OutlineItem dart_to(const std::string& name, Point point, Point to) {
    DartItem dart;
    dart.name = name;
    dart.point = point;
    return {dart, to};
}

Pattern of(Outline outline, const std::string& fold = "") {
    Piece piece;
    piece.name = "piece";
    piece.cut = Cut{1, fold, false, {}};
    piece.grain = Grain{{40, 60}, {40, 140}, ""};
    piece.outline = std::move(outline);
    Pattern pattern;
    pattern.name = "unusual";
    pattern.pieces = {piece};
    return pattern;
}

PivotRequest request_to(const std::string& dart, const std::string& place) {
    PivotRequest request;
    request.piece = "piece";
    request.dart = dart;
    request.to = place;
    return request;
}

double total_angle(const Pattern& pattern) {
    double sum = 0;
    const Outline& outline = pattern.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) sum += figures_of(outline, i).angle_rad;
    }
    return sum;
}

/// A drop: one curved edge from its only corner round to it.
Outline drop() {
    Outline outline;
    outline.start = {0, 0};
    outline.items = {sample::curve("rim", {0, 0}, {300, 60}, {60, 300})};
    return outline;
}

TEST(one_edge_all_round, is_checked) {
    EXPECT_EQ(sample::checks_of(check(of(drop()))), Names{});
}

TEST(one_edge_all_round, takes_notches_from_its_two_words) {
    Pattern pattern = of(drop());
    pattern.pieces[0].notches = {{"rim", "start", 50, NotchKind::single},
                                 {"rim", "end", 50, NotchKind::single}};
    EXPECT_EQ(sample::checks_of(check(pattern)), Names{});
    pattern.pieces[0].notches.push_back({"rim", "end", 5000, NotchKind::single});
    EXPECT_EQ(sample::checks_of(check(pattern)), Names{"notch-place"});
}

TEST(one_edge_all_round, is_walked_with_its_mirror_image) {
    Pattern pattern = of(drop());
    Seam seam;
    seam.name = "rim";
    seam.joins = {SeamSide{{"piece", "rim", "start", false}}, SeamSide{{"piece", "rim", "start", true}}};
    pattern.seams = {seam};
    const SeamWalk walk = walk_seam(pattern, "rim");
    EXPECT_DOUBLE_EQ(walk.lengths[0], walk.lengths[1]);
    EXPECT_EQ(walk.difference, 0);
    // The drop's corner is atan(5) - atan(1/5) wide; twice that is no smooth end, at the start or the end.
    for (const double corner : walk.corners_deg)
        EXPECT_NEAR(corner, 2 * degrees(std::atan(5) - std::atan(0.2)), 1e-9);
    // Where a closed run begins is no corner of a seam.
    EXPECT_EQ(sample::checks_of(check(pattern)), Names{});
}

/// A round of four straight stretches of one name, 200 mm square, with a dart between the last and the first.
Outline round_with_dart() {
    Outline outline;
    outline.start = {20, 0};
    outline.items = {line("rim", {200, 0}), line("rim", {200, 200}), line("rim", {0, 200}),
                     line("rim", {0, 20}), dart_to("dart", {100, 100}, {20, 0})};
    return outline;
}

TEST(one_edge_all_round, may_have_a_dart_at_its_only_end) {
    const Pattern pattern = of(round_with_dart());
    const auto runs = runs_of(pattern.pieces[0].outline);
    ASSERT_EQ(runs.size(), 1u);
    EXPECT_EQ(runs[0].corner_darts_after, (std::vector<std::size_t>{4}));
    const CheckReport report = check(pattern);
    EXPECT_EQ(sample::checks_of(report), (Names{"outline-kink", "outline-kink", "outline-kink"}))
        << "its three square corners; the dart closes the fourth and ends the run";
    ASSERT_EQ(report.darts.size(), 1u);
    EXPECT_NEAR(report.darts[0].legs[0], std::hypot(100, 80), 1e-12);
}

TEST(one_edge_all_round, lets_its_dart_be_moved_and_moved_back) {
    const Pattern pattern = of(round_with_dart());
    const double length = runs_of(pattern.pieces[0].outline)[0].length;
    const Pattern moved = pivot(pattern, request_to("dart", "rim@280/start")).pattern;
    ASSERT_EQ(runs_of(moved.pieces[0].outline).size(), 1u);
    EXPECT_NEAR(runs_of(moved.pieces[0].outline)[0].length, length, 1e-9);
    EXPECT_NEAR(total_angle(moved), total_angle(pattern), 1e-12);
    EXPECT_NO_THROW(check(moved));
}

TEST(outline_start, at_a_dart_changes_no_finding) {
    Pattern pattern = sample::bodice();
    sample::dart_of_bodice(pattern).point = {103, 150};  // a fault, so that there is something to compare
    Pattern other = pattern;
    Outline& outline = other.pieces[0].outline;
    outline.start = start_of_item(outline, 1);
    std::rotate(outline.items.begin(), outline.items.begin() + 1, outline.items.end());
    ASSERT_NE(outline.items[0].as_dart(), nullptr);
    const CheckReport a = check(pattern);
    const CheckReport b = check(other);
    ASSERT_FALSE(a.findings.empty());
    ASSERT_EQ(a.findings.size(), b.findings.size());
    for (std::size_t i = 0; i < a.findings.size(); ++i)
        EXPECT_EQ(a.findings[i].message, b.findings[i].message);
}

/// A panel with two darts side by side in its hem, no edge between; their points are level.
Outline darts_side_by_side() {
    Outline outline;
    outline.start = {0, 0};
    outline.items = {line("hem", {60, 0}),
                     dart_to("left", {80, 100}, {100, 0}),
                     dart_to("right", {120, 100}, {140, 0}),
                     line("hem", {200, 0}),
                     line("side", {200, 300}),
                     line("top", {0, 300}),
                     line("centre", {0, 0})};
    return outline;
}

TEST(darts_side_by_side, are_checked_as_one_mouth) {
    const Finding finding = sample::only_finding(of(darts_side_by_side()));
    EXPECT_EQ(finding.check, "dart-mouth");
    EXPECT_NEAR(finding.difference.value(), 2 * 2 * degrees(std::atan(0.2)), 1e-9) << "both closed";
}

TEST(darts_side_by_side, can_each_be_moved_away) {
    const Pattern pattern = of(darts_side_by_side());
    for (const std::string dart : {"left", "right"}) {
        const Pattern moved = pivot(pattern, request_to(dart, "top@60/centre")).pattern;
        EXPECT_NEAR(total_angle(moved), total_angle(pattern), 1e-12) << dart;
        const auto runs = runs_of(moved.pieces[0].outline);
        EXPECT_NEAR(find_run(runs, "hem")->length, 120, 1e-9) << dart;
        EXPECT_EQ(find_run(runs, "top")->darts.size(), 1u) << dart;
        EXPECT_NO_THROW(check(moved));
    }
}

/// A panel on the fold with a dart in the corner of hem and centre front, which closed is square.
Outline dart_at_fold() {
    const double leg = std::hypot(40, 160);
    const Point point{40, 160};
    // From the point the first leg goes to the fold's foot (0, 0), the second `open` further on, square to
    // the hem.
    const double open = radians(15);
    const Point foot{0, 0};
    const Point mouth = point + apply(turn_by(open), foot - point);
    const Vector hem = apply(turn_by(open), Vector{1, 0});
    Outline outline;
    outline.start = mouth;
    outline.items = {line("hem", mouth + 200 * hem), line("side", {220, 300}), line("top", {0, 300}),
                     line("centre front", foot), dart_to("dart", point, mouth)};
    EXPECT_NEAR(distance(point, mouth), leg, 1e-9);
    return outline;
}

TEST(dart_at_the_folds_corner, is_closed_when_the_corner_is_judged) {
    EXPECT_EQ(sample::checks_of(check(of(dart_at_fold(), "centre front"))), Names{});
}

TEST(dart_at_the_folds_corner, that_closes_to_no_square_is_a_fault_of_the_fold) {
    Outline outline = dart_at_fold();
    outline.items[0].to = outline.start + apply(turn_by(radians(3)), outline.items[0].to - outline.start);
    const Finding finding = sample::only_finding(of(outline, "centre front"));
    EXPECT_EQ(finding.check, "fold-corner");
    EXPECT_NEAR(finding.difference.value(), -6, 1e-9) << "3 degrees less, doubled at the fold";
}

TEST(dart_at_the_folds_corner, can_be_moved_and_comes_back_to_it) {
    const Pattern pattern = of(dart_at_fold(), "centre front");
    const Pattern moved = pivot(pattern, request_to("dart", "side@50%")).pattern;
    EXPECT_EQ(sample::checks_of(check(moved)), Names{}) << "cut open, a straight side folds straight again";
    const auto runs = runs_of(moved.pieces[0].outline);
    EXPECT_TRUE(find_run(runs, "hem")->corner_darts_before.empty());
    const Pattern back = pivot(moved, request_to("dart", "hem@0/centre front")).pattern;
    EXPECT_EQ(sample::checks_of(check(back)), Names{});
    const auto again = runs_of(back.pieces[0].outline);
    EXPECT_EQ(find_run(again, "hem")->corner_darts_before.size(), 1u);
    EXPECT_NEAR(total_angle(back), radians(15), 1e-12);
}

TEST(outline_without_edges, is_refused) {
    Outline outline;
    outline.start = {0, 0};
    outline.items = {dart_to("one", {50, 50}, {100, 0}), dart_to("two", {50, 100}, {0, 0})};
    EXPECT_THROW(check(of(outline)), UnsoundPattern);
}

}  // namespace
}  // namespace dartwright
