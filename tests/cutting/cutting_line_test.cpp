// The cutting line on pieces of which it is known.

#include "dartwright/cutting/cutting_line.hpp"

#include "dartwright/pattern/pattern_problems.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "cutting/cut_pieces.hpp"
#include "dartwright/cutting/notch_on_cutting_line.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

using testing::straight_piece;

bool has_point(const CuttingLine& line, Point p, double within_mm = 1e-9) {
    return std::any_of(line.points.begin(), line.points.end(),
                       [&](Point each) { return distance(each, p) <= within_mm; });
}

std::vector<Point> square() {
    return {{0, 0}, {100, 0}, {100, 100}, {0, 100}};
}

TEST(CuttingLine, of_a_square_is_a_larger_square) {
    const CuttingLine line = cutting_line(straight_piece(square(), {10, 10, 10, 10}));
    EXPECT_NEAR(signed_area(line.points), 120 * 120, 1e-9);
    for (const Point corner : {Point{-10, -10}, {110, -10}, {110, 110}, {-10, 110}})
        EXPECT_TRUE(has_point(line, corner));
    EXPECT_FALSE(line.is_cleaned);
    EXPECT_TRUE(line.notes.empty());
    EXPECT_EQ(line.corners.size(), 4u);
}

TEST(CuttingLine, has_the_width_of_each_edge) {
    const CuttingLine line = cutting_line(straight_piece(square(), {40, 15, 10, 0}));
    for (const Point corner : {Point{0, -40}, {115, -40}, {115, 110}, {0, 110}})
        EXPECT_TRUE(has_point(line, corner));
    EXPECT_NEAR(signed_area(line.points), 115 * 150, 1e-9);
}

TEST(CuttingLine, without_allowances_is_the_stitching_line) {
    const CuttingLine line = cutting_line(straight_piece(square(), {0, 0, 0, 0}));
    EXPECT_EQ(line.points, square());
}

// Exact geometry: inside a corner the lines beside its edges cross, each its width away.
TEST(CuttingLine, crosses_inside_a_hollow_corner_where_exact_geometry_says) {
    const CuttingLine line = cutting_line(
        straight_piece({{0, 0}, {100, 0}, {100, 40}, {60, 40}, {60, 100}, {0, 100}}, {5, 5, 10, 15, 5, 5}));
    EXPECT_TRUE(has_point(line, {75, 50}));
    EXPECT_FALSE(has_point(line, {60, 50}, 0.1)) << "the line beyond the crossing is trimmed";
    EXPECT_NEAR(signed_area(line.points), 110 * 55 + 80 * 55, 1e-9);
    EXPECT_FALSE(line.is_cleaned);
    // A slanting one: the line y = 50, and that through (60, 40) + 10 (0.8, -0.6) along (3, 4).
    const CuttingLine slanting = cutting_line(
        straight_piece({{0, 0}, {160, 0}, {160, 40}, {60, 40}, {105, 100}, {0, 100}}, {5, 5, 10, 10, 5, 5}));
    EXPECT_TRUE(has_point(slanting, {80, 50}));
}

// Exact geometry: two allowances s at the interior angle t meet s / sin(t / 2) out.
TEST(CuttingLine, meets_at_a_corner_where_exact_geometry_says) {
    const double figures[][2] = {{60, 20.000}, {90, 14.142}, {120, 11.547}, {150, 10.353}};
    for (const auto& [angle_deg, out_mm] : figures) {
        const double half = radians(angle_deg / 2);
        const Vector up{std::cos(half), std::sin(half)};
        const Vector down{std::cos(half), -std::sin(half)};
        const Point corner{0, 0};
        const CuttingLine line =
            cutting_line(straight_piece({corner, corner + 200 * down, corner + 200 * up}, {10, 10, 10}));
        EXPECT_TRUE(has_point(line, {-out_mm, 0}, 5e-4)) << angle_deg;
        EXPECT_TRUE(has_point(line, {-10 / std::sin(half), 0}, 1e-9)) << angle_deg;
    }
}

TEST(CuttingLine, blunts_a_corner_too_sharp_to_be_met_and_says_so) {
    const CuttingLine line = cutting_line(straight_piece({{0, 0}, {300, -30}, {300, 30}}, {10, 10, 10}));
    EXPECT_EQ(line.notes,
              (std::vector<std::string>{
                  "the corner of \"edge 2\" and \"edge 0\" is too sharp to be met, and is blunted"}));
    double farthest = 0;
    for (const Point p : line.points) farthest = std::max(farthest, -p.x);
    EXPECT_NEAR(farthest, sharpest_corner * 10, 1e-9);
    EXPECT_EQ(line.corners[2].kind, CornerKind::blunted);
}

TEST(CuttingLine, blunts_a_corner_as_asked) {
    CuttingRequest request;
    request.corners.push_back({{"edge 1", "edge 0"}, CornerKind::blunted, "", 12});
    const CuttingLine line = cutting_line(straight_piece(square(), {10, 10, 10, 10}), request);
    // 12 mm out along the diagonal, square to it.
    const double across = 10 * std::sqrt(2) - 12;
    EXPECT_NEAR(signed_area(line.points), 120 * 120 - across * across, 1e-9);
    EXPECT_TRUE(line.notes.empty());
}

// 10 mm beside 15 mm on edges that turn by half a degree: met, the corner would stand out 574 mm.
TEST(CuttingLine, steps_between_widths_of_nearly_straight_neighbours) {
    for (const double rise : {1.0, -1.0, 0.0}) {
        for (const double narrow : {0.0, 10.0}) {
            const Piece piece = straight_piece({{0, 200}, {0, 0}, {100, rise}, {200, 0}, {200, 200}},
                                               {15, narrow, 15, 15, 15});
            const CuttingLine line = cutting_line(piece);
            EXPECT_FALSE(line.is_cleaned) << rise;
            EXPECT_TRUE(is_simple(line.points));
            double lowest = 0;
            for (const Point p : line.points) lowest = std::min(lowest, p.y);
            EXPECT_GT(lowest, -16.1) << rise << " " << narrow;
            EXPECT_TRUE(line.corners[1].is_step);
        }
    }
}

TEST(CuttingLine, steps_square_between_the_stretches_of_an_edge) {
    Piece piece = straight_piece(square(), {10, 10, 10, 10});
    piece.allowance[0].second = std::vector<AllowanceStretch>{{"edge 3", 0, 40, 10}, {"edge 1", 0, 60, 25}};
    const CuttingLine line = cutting_line(piece);
    EXPECT_TRUE(has_point(line, {40, -10}));
    EXPECT_TRUE(has_point(line, {40, -25}));
    EXPECT_TRUE(line.undecided.empty());
}

TEST(CuttingLine, takes_no_allowance_where_none_is_decided_and_lists_it) {
    Piece piece = straight_piece(square(), {10, 10, 10, 10});
    piece.allowance.erase(piece.allowance.begin());
    piece.allowance[0].second = std::vector<AllowanceStretch>{{"edge 0", 30, 100, 10}};
    const CuttingLine line = cutting_line(piece);
    ASSERT_EQ(line.undecided.size(), 2u);
    EXPECT_EQ(line.undecided[0].edge, "edge 0");
    EXPECT_EQ(line.undecided[1].edge, "edge 1");
    EXPECT_NEAR(line.undecided[1].to_mm, 30, 1e-9);
    EXPECT_TRUE(has_point(line, {0, 0}) || has_point(line, {-10, 0}));
    CuttingRequest request;
    request.undecided_mm = 10;
    const CuttingLine decided = cutting_line(piece, request);
    EXPECT_NEAR(signed_area(decided.points), 120 * 120, 1e-9);
    EXPECT_EQ(decided.undecided.size(), 2u);
}

TEST(CuttingLine, carries_an_edge_without_allowance_on) {
    CuttingRequest request;
    request.corners.push_back({{"edge 0", "edge 1"}, CornerKind::carried_on, "edge 0", std::nullopt});
    // The side leans out: met, the hem would step at the end of the side.
    const Piece piece = straight_piece({{0, 0}, {100, 0}, {120, 100}, {0, 100}}, {0, 15, 0, 0});
    const CuttingLine stepped = cutting_line(piece);
    EXPECT_TRUE(stepped.corners[0].is_step);
    const CuttingLine carried = cutting_line(piece, request);
    EXPECT_TRUE(has_point(carried, {100 + 15 * std::sqrt(10400.0) / 100, 0}));
}

CuttingRequest one_corner(const std::string& a, const std::string& b, CornerKind kind,
                          const std::string& whose) {
    CuttingRequest request;
    request.corners.push_back({{a, b}, kind, whose, std::nullopt});
    return request;
}

// A sharp corner of 60 degrees: the seam is sewn on to the neighbour's cutting line, and its allowance ends
// square to it there.
TEST(CuttingLine, squares_an_allowance_off_at_the_end_of_its_seam) {
    const Piece piece = straight_piece({{0, 0}, {200, 0}, {100, 100 * std::sqrt(3)}}, {20, 10, 10});
    const double sewn_on = 10 / std::sin(pi / 3);
    const CuttingLine line =
        cutting_line(piece, one_corner("edge 0", "edge 1", CornerKind::squared, "edge 0"));
    EXPECT_TRUE(has_point(line, {200 + sewn_on, 0}));
    EXPECT_TRUE(has_point(line, {200 + sewn_on, -20}));
    const CuttingLine other =
        cutting_line(piece, one_corner("edge 2", "edge 0", CornerKind::squared, "edge 0"));
    EXPECT_TRUE(has_point(other, {-sewn_on, 0}));
    EXPECT_TRUE(has_point(other, {-sewn_on, -20}));
    EXPECT_EQ(other.corners[2].kind, CornerKind::squared);
    EXPECT_TRUE(is_simple(other.points));
}

TEST(CuttingLine, squares_off_beside_an_edge_without_allowance_at_the_corner) {
    const Piece piece = straight_piece({{0, 0}, {200, 0}, {100, 100 * std::sqrt(3)}}, {20, 0, 0});
    const CuttingLine line =
        cutting_line(piece, one_corner("edge 0", "edge 1", CornerKind::squared, "edge 0"));
    EXPECT_TRUE(has_point(line, {200, 0}));
    EXPECT_TRUE(has_point(line, {200, -20}));
}

// Folded over along the hem, its allowance lies on the piece: edge on edge, along the curve of the side.
TEST(CuttingLine, mirrors_the_neighbour_so_that_the_allowance_lies_on_it_when_folded) {
    for (const double lean : {-12.0, 0.0, 25.0}) {
        for (const bool is_curved : {false, true}) {
            Piece piece =
                straight_piece({{0, 0}, {200, 0}, {200 + lean, 200}, {-lean, 200}}, {30, 10, 10, 10});
            if (is_curved) {
                piece.outline.items[1].as_edge()->shape =
                    CubicShape{{Point{198 + lean / 4, 60}, Point{200 + lean, 120}}};
            }
            CuttingRequest request = one_corner("edge 0", "edge 1", CornerKind::mirrored, "edge 0");
            request.corners.push_back({{"edge 3", "edge 0"}, CornerKind::mirrored, "edge 0", std::nullopt});
            const CuttingLine line = cutting_line(piece, request);
            EXPECT_TRUE(line.notes.empty()) << line.notes.front();
            EXPECT_TRUE(is_simple(line.points));
            EXPECT_FALSE(line.is_cleaned);
            double lowest = 0;
            int below = 0;
            for (const Point p : line.points) {
                lowest = std::min(lowest, p.y);
                if (p.y >= 0 || p.y < -30 + 1e-9) continue;
                ++below;
                EXPECT_LT(testing::distance_to_line(line.points, {p.x, -p.y}), 1e-9);
            }
            EXPECT_NEAR(lowest, -30, 1e-9);
            EXPECT_GE(below, is_curved ? 2 : 0);
            const auto corner_of_hem = std::count_if(line.points.begin(), line.points.end(), [&](Point p) {
                return p.y < -30 + 1e-9 && testing::distance_to_line(line.points, {p.x, 30}) < 1e-9;
            });
            EXPECT_EQ(corner_of_hem, 2);
        }
    }
}

TEST(CuttingLine, meets_a_corner_that_cannot_be_mirrored_and_says_so) {
    // The side is 20 mm long, too short for a hem of 40.
    const Piece piece = straight_piece({{0, 0}, {200, 0}, {200, 20}, {150, 200}, {0, 200}}, {40, 5, 5, 5, 5});
    const CuttingLine line =
        cutting_line(piece, one_corner("edge 0", "edge 1", CornerKind::mirrored, "edge 0"));
    EXPECT_EQ(line.notes,
              (std::vector<std::string>{
                  "the corner of \"edge 0\" and \"edge 1\" cannot be mirrored there, and is met"}));
    EXPECT_TRUE(has_point(line, {205, -40}));
}

TEST(CuttingLine, gives_the_fold_none_and_carries_it_on) {
    Piece piece = straight_piece({{0, 0}, {100, 5}, {100, 100}, {0, 97}}, {15, 15, 15, 15});
    piece.cut = Cut{1, "edge 3", false, {}};
    const CuttingLine line = cutting_line(piece);
    for (const Point p : line.points) EXPECT_GE(p.x, -1e-9);
    EXPECT_TRUE(has_point(line, {0, -15 * std::sqrt(1 + 0.05 * 0.05)}));
    EXPECT_TRUE(has_point(line, {0, 97 + 15 * std::sqrt(1 + 0.03 * 0.03)}));
}

// A dart 12 mm from the centre, folded over it: its cap goes on along the half beyond, whichever fold is
// named first.
TEST(CuttingLine, goes_on_over_either_of_two_folds) {
    const auto line_on = [](const std::string& fold, const std::string& second) {
        Piece piece = straight_piece({{0, 0}, {200, 0}, {200, 400}, {0, 400}}, {10, 10, 10, 10});
        piece.cut = Cut{1, fold, false, {}, second};
        DartItem dart;
        dart.name = "dart";
        dart.point = {32, 180};
        dart.press = "edge 3";
        auto& items = piece.outline.items;
        items[0].to = {12, 0};
        items.insert(items.begin() + 1,
                     {{dart, {52, 0}}, {EdgeItem{"edge 0", StraightShape{}, 0}, {200, 0}}});
        return cutting_line(piece);
    };
    const CuttingLine first = line_on("edge 3", "edge 2");
    const CuttingLine second = line_on("edge 2", "edge 3");
    ASSERT_EQ(first.points.size(), second.points.size());
    for (std::size_t i = 0; i < first.points.size(); ++i)
        EXPECT_NEAR(distance(first.points[i], second.points[i]), 0, 1e-9);
    // And as on that fold alone: the cap's tip lies under the middle of the folded dart.
    const CuttingLine alone = line_on("edge 3", "");
    const auto tip_of = [](const CuttingLine& line) {
        return *std::min_element(line.points.begin(), line.points.end(),
                                 [](Point a, Point b) { return a.y < b.y; });
    };
    EXPECT_NEAR(distance(tip_of(first), tip_of(alone)), 0, 1e-9);
}

TEST(CuttingLine, cleans_up_a_narrow_mouth) {
    // A slit of 12 mm with allowances of 10: they close it.
    const Piece piece =
        straight_piece({{0, 0}, {100, 0}, {100, 100}, {56, 100}, {56, 30}, {44, 30}, {44, 100}, {0, 100}},
                       {10, 10, 10, 10, 10, 10, 10, 10});
    const CuttingLine line = cutting_line(piece);
    EXPECT_TRUE(line.is_cleaned);
    EXPECT_NEAR(signed_area(line.points), 120 * 120, 1e-3);
}

// Exact geometry: a disc cut out of a square's side leaves, beside its half circle of radius R, one of R - w.
TEST(CuttingLine, keeps_its_distance_in_a_tight_curve) {
    Piece piece = straight_piece({{0, 0}, {200, 0}, {200, 100}, {108, 100}, {92, 100}, {0, 100}},
                                 {15, 15, 15, 15, 15, 15});
    // A nick 8 mm in radius: the allowance of 15 fills it.
    EdgeItem& nick = *piece.outline.items[3].as_edge();
    nick.shape = CubicShape{{Point{108, 89}, Point{92, 89}}};
    const CuttingLine line = cutting_line(piece);
    EXPECT_TRUE(line.is_cleaned);
    EXPECT_TRUE(is_simple(line.points));
    EXPECT_NEAR(signed_area(line.points), 230 * 130, 0.1);
}

// A dart in the lower edge, 60 mm long, its mouth 20 mm wide, pressed to the left.
Piece piece_with_dart() {
    Piece piece = straight_piece({{0, 0}, {200, 0}, {200, 150}, {0, 150}}, {10, 15, 10, 15});
    piece.outline.items[0].to = {90, 0};
    DartItem dart;
    dart.name = "dart";
    dart.point = {100, 60};
    dart.press = "edge 3";
    piece.outline.items.insert(piece.outline.items.begin() + 1, {dart, Point{110, 0}});
    piece.outline.items.insert(piece.outline.items.begin() + 2,
                               {EdgeItem{"edge 0", StraightShape{}, 0}, Point{200, 0}});
    return piece;
}

// The legs go on to the cutting line of the edge closed; what lies under the folded dart is met as the edge
// lies.
TEST(CuttingLine, goes_over_a_mouth_as_the_dart_is_folded) {
    const CuttingLine line = cutting_line(piece_with_dart());
    const CutDart& dart = line.darts.at(0);
    // Closed, the two halves of the edge make a corner turned in by the dart's angle: met, it lies on the
    // leg.
    const double half = std::atan2(10, 60);
    const Vector leg = unit(Point{90, 0} - Point{100, 60});
    EXPECT_NEAR(distance(dart.a, Point{90, 0} + 10 / std::cos(half) * leg), 0, 1e-9);
    EXPECT_NEAR(distance(dart.b, Point{200 - dart.a.x, dart.a.y}), 0, 1e-9);
    // Exact geometry: the edge meets the leg at b, 90 degrees and half the dart's angle f, so that the tip is
    // at L sin b / sin(b + f) from the point.
    const double l = distance(dart.a, dart.point);
    EXPECT_NEAR(distance(dart.tip, dart.point), l * std::cos(half) / std::cos(2 * half), 1e-9);
    EXPECT_FALSE(line.is_cleaned);
    EXPECT_TRUE(dart.is_capped);
    EXPECT_EQ(dart.pressed, PressSide::before);
    EXPECT_TRUE(line.notes.empty());
}

TEST(CuttingLine, says_what_it_takes_for_a_dart_without_press_side) {
    Piece piece = piece_with_dart();
    piece.outline.items[1].as_dart()->press.clear();
    CuttingLine line = cutting_line(piece);
    EXPECT_EQ(line.notes,
              (std::vector<std::string>{
                  "the cutting line goes straight over the mouth of \"dart\": it has no press side"}));
    EXPECT_FALSE(line.darts.at(0).is_capped);
    piece.cut = Cut{1, "edge 3", false, {}};
    line = cutting_line(piece);
    EXPECT_EQ(line.notes,
              (std::vector<std::string>{
                  "\"dart\" has no press side; its cap is cut for pressing it towards \"edge 3\""}));
    EXPECT_TRUE(line.darts.at(0).is_capped);
}

TEST(CuttingLine, goes_straight_over_a_mouth_whose_legs_differ) {
    Piece piece = piece_with_dart();
    piece.outline.items[1].as_dart()->point = {104, 60};
    const CuttingLine line = cutting_line(piece);
    EXPECT_EQ(line.notes,
              (std::vector<std::string>{"the cutting line goes straight over the mouth of \"dart\": its "
                                        "legs differ by 1.3 mm"}));
}

// Exact geometry: lines w beside the legs meet w / sin f from the point.
TEST(CuttingLine, trims_a_dart_beside_its_legs_and_not_past_its_point) {
    CuttingRequest request;
    request.trimmed = {{"dart", 5}};
    const Piece piece = piece_with_dart();
    const CuttingLine line = cutting_line(piece, request);
    const CuttingLine whole = cutting_line(piece);
    EXPECT_TRUE(is_simple(line.points));
    const double half = std::atan2(10, 60);
    const double l = distance(line.darts.at(0).a, line.darts.at(0).point);
    EXPECT_TRUE(has_point(line, {100, 60 - 5 / std::sin(half)}));
    EXPECT_LT(signed_area(line.points), signed_area(whole.points));
    for (const Point p : line.points) {
        EXPECT_GE(where_in_polygon(whole.points, p) == Where::inside ||
                      testing::distance_to_line(whole.points, p) < 1e-9,
                  1);
        const bool is_in_wedge = std::abs(p.x - 100) < (60 - p.y) / 6 - 1e-9;
        if (!is_in_wedge) continue;
        // Never nearer to the legs' lines than asked, but along the cap.
        const double beside = (60 - p.y) * std::sin(half) - std::abs(p.x - 100) * std::cos(half);
        EXPECT_TRUE(beside > 5 - 1e-9 || p.y < -l * 0.05) << p.x << " " << p.y;
    }
    EXPECT_EQ(std::count_if(line.sides.begin(), line.sides.end(),
                            [](const CutSide& side) { return side.part == CutPart::leg; }),
              2);
    request.trimmed = {{"dart", 13}};
    EXPECT_EQ(cutting_line(piece, request).notes,
              (std::vector<std::string>{
                  "there is nothing to trim from \"dart\": 13 mm along each leg is all of it"}));
    request.trimmed = {{"dart", -1}};
    EXPECT_THROW(cutting_line(piece, request), BadWords);
    request.trimmed = {{"no dart", 5}};
    EXPECT_THROW(cutting_line(piece, request), UnknownName);
}

TEST(CuttingLine, is_reached_by_notches_straight_out) {
    const Piece piece = piece_with_dart();
    const CuttingLine line = cutting_line(piece);
    const auto runs = runs_of(piece.outline);
    const CutNotch side = notch_on_cutting_line(line, place_on_run(piece.outline, runs[1], 40));
    EXPECT_NEAR(distance(side.stitched, Point{200, 40}), 0, 1e-9);
    EXPECT_NEAR(distance(side.cut, Point{215, 40}), 0, 1e-9);
    EXPECT_NEAR(side.width_mm, 15, 1e-9);
    EXPECT_EQ(line.sides[side.side].item, 3u);
    CuttingRequest request;
    Piece bare = piece;
    bare.allowance.clear();
    const CuttingLine none = cutting_line(bare, request);
    const CutNotch there = notch_on_cutting_line(none, place_on_run(piece.outline, runs[1], 40));
    EXPECT_NEAR(distance(there.cut, Point{200, 40}), 0, 1e-9);
    EXPECT_NEAR(there.width_mm, 0, 1e-9);
}

TEST(CuttingLine, closes_a_gap_within_the_tolerance_and_refuses_a_wider_one) {
    Piece piece = straight_piece(square(), {10, 10, 10, 10});
    piece.outline.items.back().to = {0, 0.05};
    EXPECT_NEAR(signed_area(cutting_line(piece).points), 120 * 120, 1e-9);
    piece.outline.items.back().to = {0, 0.5};
    EXPECT_THROW(cutting_line(piece), Impossible);
}

TEST(CuttingLine, refuses_widths_that_are_none_or_too_wide) {
    for (const double width : {50.5, 9999.0}) {
        Piece piece = straight_piece(square(), {10, width, 10, 10});
        try {
            cutting_line(piece);
            ADD_FAILURE() << width;
        } catch (const BadWidth& bad) {
            EXPECT_EQ(bad.edge, "edge 1");
            EXPECT_EQ(bad.limit_mm, 50);
        }
    }
    for (const double width : {-1.0, std::nan(""), 1e300})
        EXPECT_THROW(cutting_line(straight_piece(square(), {10, width, 10, 10})), UnsoundPattern);
    EXPECT_NO_THROW(cutting_line(straight_piece(square(), {50, 50, 50, 50})));
}

TEST(CuttingLine, refuses_corners_that_are_none) {
    const Piece piece = straight_piece(square(), {10, 10, 10, 10});
    CuttingRequest request;
    request.corners = {{{"edge 0", "edge 2"}, CornerKind::met, "", std::nullopt}};
    EXPECT_THROW(cutting_line(piece, request), BadWords);
    request.corners = {{{"edge 0", "edge 7"}, CornerKind::met, "", std::nullopt}};
    EXPECT_THROW(cutting_line(piece, request), UnknownName);
    request.corners = {{{"edge 0", "edge 1"}, CornerKind::carried_on, "", std::nullopt}};
    EXPECT_THROW(cutting_line(piece, request), BadWords);
}

}  // namespace
}  // namespace dartwright
