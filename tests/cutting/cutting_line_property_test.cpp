// Laws of the cutting line over generated pieces.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "cutting/cut_pieces.hpp"
#include "dartwright/cutting/notch_on_cutting_line.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::add_any_allowances;
using testing::any_piece;
using testing::distance_to_item;
using testing::distance_to_line;
using testing::real_between;

constexpr double enough_mm = 2e-4;  // what is made one point, on top of the line's error

Piece any_cut_piece(bool may_have_stretches = true) {
    testing::GeneratedPiece generated = any_piece(true, *testing::evenly(1, 3));
    Piece piece = generated.pattern.pieces[0];
    add_any_allowances(piece, std::min(40.0, generated.size_mm / 10), may_have_stretches);
    return piece;
}

RC_GTEST_PROP(CuttingLine, is_simple_and_encloses_the_stitching_line, ()) {
    const Piece piece = any_cut_piece();
    const CuttingLine line = cutting_line(piece);
    RC_ASSERT(line.points.size() == line.sides.size());
    RC_ASSERT(is_simple(line.points));
    RC_ASSERT(signed_area(line.points) > 0);
    for (const Point p : flat_outline(piece.outline, DartsDrawn::to_points, 0.1).points) {
        const bool is_within = where_in_polygon(line.points, p) == Where::inside;
        RC_ASSERT(is_within || distance_to_line(line.points, p) < cutting_line_error_mm + enough_mm);
    }
}

RC_GTEST_PROP(CuttingLine, lies_the_width_away_beside_each_edge, ()) {
    const Piece piece = any_cut_piece();
    const CuttingLine line = cutting_line(piece);
    // A slit that is closed is as wide as the line is exact on both sides.
    const double error_mm = (line.is_cleaned ? 2 : 1) * cutting_line_error_mm;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        const CutSide& side = line.sides[i];
        if (side.part != CutPart::edge) continue;
        const Point next = line.points[(i + 1) % line.points.size()];
        for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            const double away =
                distance_to_item(piece.outline, side.item, between(line.points[i], next, share));
            RC_ASSERT(std::abs(away - side.width_mm) < error_mm + enough_mm);
        }
    }
}

// The distance from places of an edge to the whole line, away from its ends: there other widths begin, and
// the line of a leg that leans to the edge cuts the allowance off.
RC_GTEST_PROP(CuttingLine, comes_nowhere_nearer_to_an_edge_than_its_width, ()) {
    const Piece piece = any_cut_piece(false);
    const CuttingLine line = cutting_line(piece);
    for (std::size_t item = 0; item < piece.outline.items.size(); ++item) {
        const EdgeItem* edge = piece.outline.items[item].as_edge();
        if (!edge) continue;
        const auto allowance = std::find_if(piece.allowance.begin(), piece.allowance.end(),
                                            [&](const auto& each) { return each.first == edge->edge; });
        const double width = std::get<double>(allowance->second);
        const Point start = start_of_item(piece.outline, item);
        const Point end = piece.outline.items[item].to;
        for (const Curve& curve : curves_of_item(piece.outline, item)) {
            for (const double share : {0.1, 0.3, 0.5, 0.7, 0.9}) {
                const Point p = point_at(curve, share);
                if (distance(p, start) < 8 * width || distance(p, end) < 8 * width) continue;
                RC_ASSERT(distance_to_line(line.points, p) > width - cutting_line_error_mm - enough_mm);
            }
        }
    }
}

// A waist of 200 mm with a dart whose mouth ends `gap_mm` before the side, its point leaning over by so much.
Piece piece_with_dart_near_the_side(double gap_mm, double lean_mm) {
    Piece piece = testing::straight_piece({{0, 0}, {200, 0}, {200, 300}, {0, 300}}, {15, 15, 15, 15});
    const Point point{192 - gap_mm + lean_mm, 90};
    const double leg = norm(point - Point{192 - gap_mm, 0});
    const auto end_at = [&](double x) { return point + leg * unit(Point{x, 0} - point); };
    piece.outline.items[0].to = end_at(184 - gap_mm);
    DartItem dart;
    dart.name = "dart";
    dart.point = point;
    dart.press = "edge 3";
    piece.outline.items.insert(piece.outline.items.begin() + 1, {dart, end_at(200 - gap_mm)});
    piece.outline.items.insert(piece.outline.items.begin() + 2,
                               {EdgeItem{"edge 0", StraightShape{}, 0}, Point{200, 0}});
    return piece;
}

// A leg that leans over a short edge comes to its line past the middle, or only past its end.
TEST(CuttingLine, keeps_the_allowance_beside_a_dart_near_a_corner) {
    for (const double gap_mm : {1.5, 3.0, 6.0, 12.0, 25.0}) {
        for (const double lean_mm : {-50.0, -24.0, 0.0, 24.0, 50.0}) {
            const Piece piece = piece_with_dart_near_the_side(gap_mm, lean_mm);
            const CuttingLine line = cutting_line(piece);
            EXPECT_TRUE(is_simple(line.points));
            const double left = piece.outline.items[0].to.x;
            for (double share = 0.05; share < 1; share += 0.05) {
                const Point on_waist{share * (left - 20),
                                     share * (left - 20) / left * piece.outline.items[0].to.y};
                const Point on_side{200, share * 300};
                for (const Point p : {on_waist, on_side}) {
                    EXPECT_GT(distance_to_line(line.points, p), 15 - cutting_line_error_mm)
                        << gap_mm << " mm from the side, leaning " << lean_mm << " mm";
                }
            }
        }
    }
}

// A neck narrower than its allowance is wide: the allowance of the shoulder's end would reach over the fold.
TEST(CuttingLine, is_cut_off_at_the_fold) {
    Piece piece = testing::straight_piece({{0, 0}, {150, 0}, {150, 200}, {12, 215}, {6, 195}, {0, 195}},
                                          {10, 15, 20, 20, 20, 0});
    piece.cut = Cut{1, "edge 5", false, {}};
    const CuttingLine line = cutting_line(piece);
    EXPECT_TRUE(is_simple(line.points));
    double least = 1;
    for (const Point p : line.points) least = std::min(least, p.x);
    EXPECT_NEAR(least, 0, 1e-5);
    EXPECT_EQ(line.notes, (std::vector<std::string>{
                              "an allowance that reached over the fold, \"edge 5\", is cut off along it"}));
}

double farthest_apart(const std::vector<Point>& a, const std::vector<Point>& b) {
    double most = 0;
    for (const Point p : a) most = std::max(most, distance_to_line(b, p));
    for (const Point p : b) most = std::max(most, distance_to_line(a, p));
    return most;
}

// Over a mouth or under a folded dart the line goes square across where nothing better can be found.
bool is_known_square(const CuttingLine& line) {
    return std::any_of(line.notes.begin(), line.notes.end(), [](const std::string& note) {
        return note.find("square across") != std::string::npos;
    });
}

// What the image of a piece may have its points elsewhere along its curves for.
constexpr double same_line_mm = 2 * (cutting_line_error_mm + enough_mm);

RC_GTEST_PROP(CuttingLine, of_the_mirrored_piece_is_the_mirror_image, ()) {
    const Piece piece = any_cut_piece();
    const MirrorLine mirror{{real_between(-100, 100), real_between(-100, 100)},
                            apply(turn_by(real_between(0, 6)), Vector{1, 0})};
    const CuttingLine line = cutting_line(piece);
    RC_PRE(!is_known_square(line));
    std::vector<Point> image = line.points;
    for (Point& p : image) p = mirrored(mirror, p);
    RC_ASSERT(farthest_apart(cutting_line(mirrored(mirror, piece)).points, image) < same_line_mm);
}

RC_GTEST_PROP(CuttingLine, turns_and_shifts_with_the_piece, ()) {
    const Piece piece = any_cut_piece();
    const testing::Similarity moved{
        real_between(0, 6), 1, false, {real_between(-1000, 1000), real_between(-1000, 1000)}};
    const CuttingLine line = cutting_line(piece);
    RC_PRE(!is_known_square(line));
    std::vector<Point> image = line.points;
    for (Point& p : image) p = testing::image(moved, p);
    RC_ASSERT(farthest_apart(cutting_line(testing::image(moved, piece)).points, image) < same_line_mm);
}

// The points of the cap between A' and B'.
std::vector<Point> cap_of(const CuttingLine& line, const CutDart& dart) {
    const auto start = std::find(line.points.begin(), line.points.end(), dart.a);
    std::vector<Point> out;
    for (auto i = std::size_t(start - line.points.begin());
         i < line.points.size() && !(line.points[i] == dart.b); ++i) {
        out.push_back(line.points[i]);
    }
    out.push_back(dart.b);
    return out;
}

// The line without the cap: what is left is one stretch from B' round to A'.
double distance_to_rest(const CuttingLine& line, const CutDart& dart, Point p) {
    double least = 1e300;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        const bool is_of_cap = line.sides[i].part == CutPart::mouth && line.sides[i].item == dart.item;
        if (is_of_cap && cap_of(line, dart).size() > 2) {
            const std::vector<Point> cap = cap_of(line, dart);
            if (std::find(cap.begin(), cap.end() - 1, line.points[i]) != cap.end() - 1) continue;
        }
        least = std::min(
            least, testing::distance_to_side(line.points[i], line.points[(i + 1) % line.points.size()], p));
    }
    return least;
}

// Folded over, the half beside the press side lies on the cutting line there, and so does the other, turned
// about the point.
RC_GTEST_PROP(CuttingLine, has_caps_that_fold_onto_the_line_beside_the_mouth, ()) {
    Piece piece = any_piece(true, 1).pattern.pieces[0];
    add_any_allowances(piece, 10, false);
    DartItem& dart = *piece.outline.items.back().as_dart();
    dart.press = piece.outline.items[1].as_edge()->edge;
    const CuttingLine line = cutting_line(piece);
    const CutDart& cut = line.darts.at(0);
    RC_PRE(cut.is_capped && !line.is_cleaned && !is_known_square(line));
    const DartFigures f = figures_of(piece.outline, cut.item);
    const bool is_before = *cut.pressed == PressSide::before;
    const MirrorLine leg{f.point, unit((is_before ? f.a : f.b) - f.point)};
    const Motion closing = closing_about_point(f);
    const std::vector<Point> cap = cap_of(line, cut);
    const auto tip = std::size_t(
        std::min_element(cap.begin(), cap.end(),
                         [&](Point a, Point b) { return distance(a, cut.tip) < distance(b, cut.tip); }) -
        cap.begin());
    for (std::size_t k = 0; k < cap.size(); ++k) {
        const bool is_beside = k == tip || (k < tip) == is_before;
        const Point folded =
            is_beside ? mirrored(leg, cap[k]) : apply(is_before ? closing : inverse(closing), cap[k]);
        RC_ASSERT(distance_to_rest(line, cut, folded) < 1e-6);
    }
}

RC_GTEST_PROP(CuttingLine, without_allowances_is_the_stitching_line_with_its_caps, ()) {
    Piece piece = any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    for (OutlineItem& item : piece.outline.items) {
        if (DartItem* dart = item.as_dart()) dart->press = piece.outline.items[1].as_edge()->edge;
    }
    CuttingRequest request;
    request.undecided_mm = 0;
    const CuttingLine line = cutting_line(piece, request);
    RC_PRE(!line.is_cleaned);
    for (const CutDart& cut : line.darts) {
        const DartFigures f = figures_of(piece.outline, cut.item);
        RC_ASSERT(distance(cut.a, f.a) < 1e-6);
        RC_ASSERT(distance(cut.b, f.b) < 1e-6);
        if (!cut.is_capped) continue;
        const Cap cap = cap_of(piece, cut.item, *cut.pressed);
        RC_ASSERT(distance(cap.tip, cut.tip) < 3 * cutting_line_error_mm);
    }
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        if (line.sides[i].part != CutPart::edge) continue;
        RC_ASSERT(distance_to_item(piece.outline, line.sides[i].item, line.points[i]) < enough_mm);
    }
}

// The notch lies on the cutting line, and inside an edge the edge's own width out.
RC_GTEST_PROP(CuttingLine, is_reached_by_notches, ()) {
    const Piece piece = any_cut_piece();
    const CuttingLine line = cutting_line(piece);
    for (const Run& run : runs_of(piece.outline)) {
        const RunPlace place = place_on_run(piece.outline, run, real_between(0, 1) * run.length);
        const CutNotch notch = notch_on_cutting_line(line, place);
        RC_ASSERT(distance_to_line(line.points, notch.cut) < cutting_line_error_mm + enough_mm);
        const CutSide& side = line.sides[notch.side];
        RC_ASSERT(notch.width_mm >= 0);
        if (side.part == CutPart::edge && side.item == place.item && !line.is_cleaned) {
            RC_ASSERT(std::abs(notch.width_mm - side.width_mm) < 2 * (cutting_line_error_mm + enough_mm));
        }
    }
}

// Whatever is asked at the corners, and however wide the allowances: a simple line round the stitching line.
RC_GTEST_PROP(CuttingLine, stays_simple_whatever_is_asked_of_its_corners, ()) {
    Piece piece = any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    add_any_allowances(piece, *testing::evenly(1, 60), true);
    CuttingRequest request;
    for (const Run& run : runs_of(piece.outline)) {
        const auto kind = static_cast<CornerKind>(*testing::evenly(0, 5));
        const std::optional<double> limit =
            *rc::gen::arbitrary<bool>() ? std::optional(real_between(0.1, 50)) : std::nullopt;
        request.corners.push_back(
            {{run.edge, run.after}, kind, *rc::gen::arbitrary<bool>() ? run.edge : run.after, limit});
    }
    for (const OutlineItem& item : piece.outline.items) {
        if (const DartItem* dart = item.as_dart())
            request.trimmed.push_back({dart->name, real_between(0, 10)});
    }
    const CuttingLine line = [&] {
        try {
            return cutting_line(piece, request);
        } catch (const BadWidth&) {
            return CuttingLine{};
        }
    }();
    RC_PRE(!line.points.empty());
    RC_ASSERT(is_simple(line.points));
    RC_ASSERT(signed_area(line.points) > 0);
    FlatOutline flat = flat_outline(piece.outline, DartsDrawn::to_points, 0.1);
    for (const Point p : flat.points) {
        const bool is_within = where_in_polygon(line.points, p) == Where::inside;
        RC_ASSERT(is_within || distance_to_line(line.points, p) < cutting_line_error_mm + enough_mm);
    }
}

}  // namespace
}  // namespace dartwright
