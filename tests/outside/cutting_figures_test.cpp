// The cutting line against GEOS, a library that shares no code with this one, and figures that were worked
// out apart from it.

#include <geos_c.h>
#include <gtest/gtest.h>

#include <cmath>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

enum class Corners { mitred, rounded };

// Of the polygon drawn out by one width all round.
double area_by_geos(const std::vector<Point>& polygon, double width_mm, Corners corners) {
    const GEOSContextHandle_t geos = GEOS_init_r();
    const auto count = static_cast<unsigned>(polygon.size());
    GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(geos, count + 1, 2);
    for (unsigned i = 0; i <= count; ++i) {
        GEOSCoordSeq_setXY_r(geos, sequence, i, polygon[i % count].x, polygon[i % count].y);
    }
    GEOSGeometry* shape =
        GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, sequence), nullptr, 0);
    const int join = corners == Corners::mitred ? GEOSBUF_JOIN_MITRE : GEOSBUF_JOIN_ROUND;
    constexpr int segments_a_quarter = 400;
    GEOSGeometry* grown =
        GEOSBufferWithStyle_r(geos, shape, width_mm, segments_a_quarter, GEOSBUF_CAP_ROUND, join, 10);
    double area = -1;
    GEOSArea_r(geos, grown, &area);
    GEOSGeom_destroy_r(geos, grown);
    GEOSGeom_destroy_r(geos, shape);
    GEOS_finish_r(geos);
    return area;
}

Piece straight_edges(const std::vector<Point>& corners) {
    Piece piece;
    piece.name = "piece";
    piece.outline.start = corners.front();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        piece.outline.items.push_back(
            {EdgeItem{"edge " + std::to_string(i), StraightShape{}, 0}, corners[(i + 1) % corners.size()]});
    }
    return piece;
}

CuttingLine with_one_width(const Piece& piece, double width_mm) {
    CuttingRequest request;
    request.undecided_mm = width_mm;
    return cutting_line(piece, request);
}

TEST(cutting_line_by_geos, of_straight_pieces_with_mitred_corners) {
    const std::vector<std::vector<Point>> pieces{
        {{0, 0}, {300, 0}, {260, 400}, {30, 390}},
        {{0, 0}, {200, 10}, {250, 160}, {120, 260}, {-40, 130}},
        // A yoke with a corner turned in, a slit that two allowances close, and a notch narrower than they
        // are.
        {{0, 0}, {300, 0}, {300, 200}, {160, 200}, {150, 80}, {140, 200}, {0, 200}},
        {{0, 0}, {300, 0}, {300, 200}, {155, 200}, {155, 60}, {145, 60}, {145, 200}, {0, 200}},
        {{0, 0}, {200, 0}, {200, 90}, {120, 100}, {205, 110}, {200, 300}, {0, 300}, {30, 150}},
    };
    for (const std::vector<Point>& corners : pieces) {
        for (const double width_mm : {5.0, 10.0, 15.0}) {
            const CuttingLine line = with_one_width(straight_edges(corners), width_mm);
            EXPECT_TRUE(line.notes.empty());
            EXPECT_NEAR(signed_area(line.points), area_by_geos(corners, width_mm, Corners::mitred), 1e-2);
        }
    }
}

// A fine polygon of the curves has no corners to speak of, so that round ones are the true line beside them.
TEST(cutting_line_by_geos, of_a_smooth_piece) {
    Piece piece;
    piece.name = "piece";
    piece.outline.start = {0, 0};
    const auto curve = [&](Point first, Point second, Point to) {
        piece.outline.items.push_back({EdgeItem{"edge", CubicShape{{first, second}}, 0}, to});
    };
    curve({60, 0}, {120, 40}, {120, 100});
    curve({120, 150}, {80, 160},
          {80, 200});  // waisted: it bends in, with a radius of some 30 mm at the least
    curve({80, 250}, {0, 260}, {-40, 200});
    curve({-60, 170}, {-60, 0}, {0, 0});
    const std::vector<Point> fine = flat_outline(piece.outline, DartsDrawn::to_points, 1e-5).points;
    for (const double width_mm : {5.0, 15.0, 25.0}) {
        const CuttingLine line = with_one_width(piece, width_mm);
        // The line may be off by its error along the whole of it, some 800 mm; 5 mm2 is 0.006 mm.
        EXPECT_NEAR(signed_area(line.points), area_by_geos(fine, width_mm, Corners::rounded), 5);
    }
}

// Exact geometry: a circle of radius R with an allowance w is one of radius R + w, and cut out of a piece one
// of R - w. A cubic quarter circle strays outwards from the true one by at most 2.8e-4 R: Goldapp 1991, from
// memory, not verified.
TEST(cutting_line_by_closed_form, of_discs) {
    const double radius = 120;
    const double handle = radius * 4.0 / 3 * (std::sqrt(2) - 1);
    Piece disc;
    disc.name = "disc";
    disc.outline.start = {radius, 0};
    const Point at[] = {{radius, 0}, {0, radius}, {-radius, 0}, {0, -radius}};
    for (int k = 0; k < 4; ++k) {
        const Point from = at[k];
        const Point to = at[(k + 1) % 4];
        const double share = handle / radius;
        disc.outline.items.push_back(
            {EdgeItem{"rim", CubicShape{{from + share * (to - Point{}), to + share * (from - Point{})}}, 0},
             to});
    }
    for (const double width_mm : {5.0, 15.0, 40.0}) {
        const CuttingLine line = with_one_width(disc, width_mm);
        for (const Point p : line.points) {
            EXPECT_NEAR(distance(p, {}), radius + width_mm, 2.8e-4 * radius + cutting_line_error_mm);
        }
        const double ring = signed_area(line.points) - signed_area(disc.outline, DartsDrawn::to_points);
        EXPECT_NEAR(ring, pi * ((radius + width_mm) * (radius + width_mm) - radius * radius),
                    2 * pi * (radius + width_mm) * 0.02);
    }
}

// Exact geometry: of two allowances u and w at the interior angle t the corner stands out
// sqrt(u^2 + w^2 + 2 u w cos t) / sin t from the corner of the stitching line, as long as neither is so
// narrow that it is stepped.
TEST(cutting_line_by_closed_form, of_corners_of_two_widths) {
    for (const double angle_deg : {60.0, 75.0, 90.0, 110.0, 130.0}) {
        const double t = radians(angle_deg);
        const Vector second{std::cos(t), std::sin(t)};
        Piece piece = straight_edges({{0, 0}, {200, 0}, Point{} + 200 * second});
        const double u = 12;
        const double w = 10;
        piece.allowance = {{"edge 0", u}, {"edge 1", 0.0}, {"edge 2", w}};
        const CuttingLine line = cutting_line(piece);
        const double stands_out = std::sqrt(u * u + w * w + 2 * u * w * std::cos(t)) / std::sin(t);
        double nearest = 1e300;
        for (const Point p : line.points) {
            if (p.y > -u + 1e-9 || p.y < -u - 1e-9) continue;
            nearest = std::min(nearest, std::abs(distance(p, {}) - stands_out));
        }
        EXPECT_LT(nearest, 1e-9) << angle_deg;
    }
}

// Exact geometry, the figures of caps on straight edges again, now on the cutting line: the tip is at
// L sin b / sin(b + f), L the leg drawn on to the cutting line, which is w / sin b longer where the edge
// meets it at b.
TEST(cutting_line_by_closed_form, of_caps) {
    struct Row {
        double leg;
        double half_deg;
        double interior_deg;
        double tip;
    };
    for (const Row& row :
         {Row{100, 10, 90, 101.543}, Row{100, 10, 80, 98.481}, Row{100, 10, 100, 104.801},
          Row{250, 8, 85, 249.390}, Row{250, 8, 95, 255.600}, Row{120, 9.125, 75, 116.523}}) {
        const double f = radians(row.half_deg);
        const double b = radians(row.interior_deg);
        const double width_mm = 12;
        // The point of the stitching line's dart, so that the legs are so long on the cutting line.
        const double stitched = row.leg - width_mm / std::sin(b);
        const Point a{-stitched * std::sin(f), -stitched * std::cos(f)};
        const Point other{stitched * std::sin(f), -stitched * std::cos(f)};
        // The edge leaves A at b from the leg, and B so that the mouth is true.
        const Vector to_left = apply(turn_by(b), unit(Point{} - a));
        const Vector to_right = apply(turn_by(-(pi - b)), unit(Point{} - other));
        Piece piece;
        piece.name = "piece";
        piece.outline.start = a + 150 * to_left;
        const auto line = [&](const char* edge, Point to) {
            piece.outline.items.push_back({EdgeItem{edge, StraightShape{}, 0}, to});
        };
        line("hem", a);
        DartItem dart;
        dart.name = "dart";
        dart.point = {0, 0};
        dart.press = "left";
        piece.outline.items.push_back({dart, other});
        line("hem", other + 150 * to_right);
        line("right", {150, 200});
        line("top", {-150, 200});
        line("left", piece.outline.start);
        const CuttingLine cut = with_one_width(piece, width_mm);
        EXPECT_NEAR(distance(cut.darts.at(0).a, {}), row.leg, 1e-9);
        EXPECT_NEAR(distance(cut.darts.at(0).tip, {}), row.tip, 0.5e-3) << row.leg << " " << row.interior_deg;
        EXPECT_NEAR(distance(cut.darts.at(0).tip, {}), row.leg * std::sin(b) / std::sin(b + f), 1e-9);
    }
}

}  // namespace
}  // namespace dartwright
