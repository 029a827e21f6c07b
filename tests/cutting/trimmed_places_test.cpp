// Where allowances ran into each other is said: against brute force over places of the stitching line.

#include "dartwright/cutting/trimmed_places.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <sstream>

#include "cutting/cut_pieces.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

CuttingLine told_line(const Piece& piece) {
    CuttingRequest request;
    request.tells_trimmed = true;
    return cutting_line(piece, request);
}

using testing::distance_to_line;
using testing::evenly;
using testing::real_between;
using testing::straight_piece;

/// A rectangle with a slit in its upper side that may be narrower than the allowances of its sides, turned,
/// its file begun anywhere, with edges bowed and some in two items.
Piece any_slit_piece() {
    const double width = real_between(80, 400);
    const double height = real_between(80, 400);
    const double across = width * real_between(0.35, 0.65);
    const double mouth = real_between(1, width / 5);
    const double bottom = real_between(0.5, width / 5);
    const double deep = height * real_between(0.2, 0.7);
    const double aside = real_between(-0.05, 0.05) * width;
    std::vector<Point> corners{{0, 0},
                               {width, 0},
                               {width, height},
                               {across + mouth, height},
                               {across + aside + bottom, height - deep},
                               {across + aside - bottom, height - deep},
                               {across - mouth, height},
                               {0, height}};
    const Turn turn = turn_by(real_between(0, 2 * pi));
    for (Point& p : corners) p = Point{} + apply(turn, p - Point{});
    const std::size_t first = std::size_t(*evenly(0, int(corners.size())));
    std::rotate(corners.begin(), corners.begin() + std::ptrdiff_t(first), corners.end());
    std::vector<double> widths;
    for (std::size_t i = 0; i < corners.size(); ++i)
        widths.push_back(*evenly(0, 5) == 0 ? 0.0 : real_between(0.5, 30));
    Piece piece = straight_piece(corners, widths);
    if (*rc::gen::arbitrary<bool>()) {
        const std::size_t bowed = std::size_t(*evenly(0, int(corners.size())));
        const Point from = corners[bowed];
        const Point to = corners[(bowed + 1) % corners.size()];
        const Vector out = real_between(-0.02, 0.02) * perpendicular(to - from);
        piece.outline.items[bowed].as_edge()->shape =
            CubicShape{{between(from, to, 0.3) + out, between(from, to, 0.7) + out}};
    }
    return piece;
}

/// What a failure is about.
void log_piece(const Piece& piece, const CuttingLine& line) {
    std::ostringstream words;
    words << "cleaned " << line.is_cleaned;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const Point from = start_of_item(piece.outline, i);
        words << "\n(" << from.x << ", " << from.y << ") " << piece.outline.items[i].as_edge()->edge
              << " allowance " << std::get<double>(piece.allowance[i].second);
    }
    for (const TrimmedPlace& place : line.trimmed)
        words << "\ntrimmed " << place.edge << " " << place.from_mm << " to " << place.to_mm;
    RC_LOG() << words.str() << "\n";
}

double width_at(const Piece& piece, const std::string& edge) {
    for (const auto& [name, allowance] : piece.allowance)
        if (name == edge) return std::get<double>(allowance);
    throw std::runtime_error("no allowance of " + edge);
}

/// Whether the cloth that is wanted beside the item, straight out from it, holds the point well inside.
bool is_well_beside(const Piece& piece, std::size_t item, Point p, double width_mm) {
    constexpr double well_mm = 0.1;
    for (const Curve& curve : curves_of_item(piece.outline, item)) {
        const ClosestPoint closest = closest_point(curve, p);
        const bool is_inner = closest.parameter > 0.02 && closest.parameter < 0.98;
        const bool is_outside = cross(tangent_at(curve, closest.parameter), p - closest.point) < 0;
        if (is_inner && is_outside && closest.distance < width_mm - well_mm) return true;
    }
    return false;
}

bool is_said(const CuttingLine& line, const std::string& edge, double at_mm) {
    return std::any_of(line.trimmed.begin(), line.trimmed.end(), [&](const TrimmedPlace& place) {
        return place.edge == edge && at_mm > place.from_mm - cutting::one_place_mm &&
               at_mm < place.to_mm + cutting::one_place_mm;
    });
}

/// Whether the corner with a neighbour, which every inner corner trims, may be why the allowance does not end
/// there.
bool may_be_of_corner(const Piece& piece, const Run& run, const std::vector<Point>& stitched, Point end) {
    if (where_in_polygon(stitched, end) != Where::outside) return true;
    for (std::size_t item = 0; item < piece.outline.items.size(); ++item) {
        const std::string& other = piece.outline.items[item].as_edge()->edge;
        if (other != run.before && other != run.after) continue;
        if (testing::distance_to_item(piece.outline, item, end) < width_at(piece, other) + 0.1) return true;
    }
    return false;
}

// Where the end of an edge's allowance lies in that of an edge that is no neighbour of it, the place is said.
RC_GTEST_PROP(TrimmedPlaces, AreAllThatAreWithinAnothersAllowance, ()) {
    const Piece piece = any_slit_piece();
    const CuttingLine line = told_line(piece);
    log_piece(piece, line);
    const std::vector<Point> stitched = flat_outline(piece.outline, DartsDrawn::to_points, 0.01).points;
    std::size_t covered = 0;
    for (const Run& run : runs_of(piece.outline)) {
        const double width = width_at(piece, run.edge);
        for (int k = 0; k < 20; ++k) {
            const double at = run.length * (k + 0.5) / 20;
            const RunPlace place = place_on_run(piece.outline, run, at);
            const Point end = place.point - width * perpendicular(place.tangent);
            if (may_be_of_corner(piece, run, stitched, end)) continue;
            for (std::size_t item = 0; item < piece.outline.items.size(); ++item) {
                const std::string& other = piece.outline.items[item].as_edge()->edge;
                if (other == run.edge || other == run.before || other == run.after) continue;
                const double others = width_at(piece, other);
                if (!is_well_beside(piece, item, end, others)) continue;
                ++covered;
                RC_LOG() << run.edge << " at " << at << " in " << other << "\n";
                RC_ASSERT(line.is_cleaned);
                RC_ASSERT(is_said(line, run.edge, at));
            }
        }
    }
    RC_CLASSIFY(covered > 0, "allowances run into each other");
}

// What is said is so: somewhere there the cutting line is not where the edge's own allowance ends.
RC_GTEST_PROP(TrimmedPlaces, HaveACuttingLineElsewhere, ()) {
    const Piece piece = any_slit_piece();
    const CuttingLine line = told_line(piece);
    log_piece(piece, line);
    RC_ASSERT(line.is_cleaned || line.trimmed.empty());
    const std::vector<Run> runs = runs_of(piece.outline);
    for (const TrimmedPlace& place : line.trimmed) {
        const Run& run = *find_run(runs, place.edge);
        RC_ASSERT(place.from_mm >= -1e-6);
        RC_ASSERT(place.from_mm <= place.to_mm);
        RC_ASSERT(place.to_mm <= run.length + 1e-6);
        constexpr double more_than_nudges_mm = 1e-4;
        double farthest = 0;
        for (int k = 0; k <= 40; ++k) {
            const RunPlace on =
                place_on_run(piece.outline, run, place.from_mm + (place.to_mm - place.from_mm) * k / 40);
            const Point end = on.point - width_at(piece, run.edge) * perpendicular(on.tangent);
            farthest = std::max(farthest, distance_to_line(line.points, end));
        }
        const bool is_corner =
            place.to_mm - place.from_mm < 1e-6 && (place.from_mm < 1e-6 || place.to_mm > run.length - 1e-6);
        RC_ASSERT(is_corner || farthest > more_than_nudges_mm);
    }
    RC_CLASSIFY(!line.trimmed.empty(), "trimmed");
}

TEST(trimmed_places, of_a_slit_are_its_two_sides) {
    const Pattern pattern =
        read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/corners/slit.json");
    const Piece& piece = pattern.pieces.at(0);
    const CuttingLine line = told_line(piece);
    ASSERT_EQ(line.trimmed.size(), 2u);
    for (const std::size_t k : {0u, 1u}) {
        EXPECT_EQ(line.trimmed[k].edge, k == 0 ? "right slit" : "left slit");
        EXPECT_NEAR(line.trimmed[k].from_mm, 0, 0.01);
    }
    // Exact geometry: by Pythagoras, 3 and 9 mm across, 180 mm down.
    EXPECT_NEAR(line.trimmed[0].to_mm, std::hypot(3, 180), 0.01);
    EXPECT_NEAR(line.trimmed[1].to_mm, std::hypot(9, 180), 0.01);
    EXPECT_NEAR(distance(line.trimmed[0].at, {204.5, 490}), 0, 0.01);
}

// A slit of which the lower half is narrower than twice the allowance.
TEST(trimmed_places, end_where_there_is_room_again) {
    // The sides stand 4 mm apart at the bottom and 44 mm at the mouth, 100 mm up: 20 mm for two allowances of
    // 10 are reached 40 mm up; where their lines meet there, each belongs to the place straight across from
    // it.
    const Piece piece =
        straight_piece({{0, 0}, {200, 0}, {200, 150}, {122, 150}, {102, 50}, {98, 50}, {78, 150}, {0, 150}},
                       {10, 10, 10, 10, 10, 10, 10, 10});
    const CuttingLine line = told_line(piece);
    ASSERT_TRUE(line.is_cleaned);
    ASSERT_EQ(line.trimmed.size(), 3u);
    // Where the two lines meet, on the middle line x = 100: the foot of that point on a side.
    const double slope = std::atan2(20, 100);
    const double up_of_meeting = (10 / std::cos(slope) - 2) / std::tan(slope);
    const double foot = up_of_meeting * std::cos(slope) + (100 - 102) * std::sin(slope);
    EXPECT_EQ(line.trimmed[0].edge, "edge 3");
    EXPECT_NEAR(line.trimmed[0].from_mm, std::hypot(20, 100) - foot, 0.01);
    EXPECT_NEAR(line.trimmed[0].to_mm, std::hypot(20, 100), 0.01);
    EXPECT_EQ(line.trimmed[1].edge, "edge 4");
    EXPECT_NEAR(line.trimmed[1].to_mm - line.trimmed[1].from_mm, 4, 0.01);
    EXPECT_EQ(line.trimmed[2].edge, "edge 5");
    EXPECT_NEAR(line.trimmed[2].to_mm, foot, 0.01);
}

std::vector<std::string> trimmed_edges(const CuttingLine& line) {
    std::vector<std::string> out;
    for (const TrimmedPlace& place : line.trimmed) out.push_back(place.edge);
    return out;
}

// The step beside the slit's bottom lies within the wide allowance of its left side; the edge on the right,
// which has none, was said to be trimmed where that step is opposite to it.
TEST(trimmed_places, of_a_step_at_a_corner_are_not_of_the_edge_before_it) {
    const Piece piece = straight_piece({{64.3738, 80},
                                        {52.0306, 64},
                                        {28.5298, 64},
                                        {27.8499, 80},
                                        {0, 80},
                                        {0, 0},
                                        {131.748, 0},
                                        {131.748, 80}},
                                       {0, 1.49872, 23.5473, 0, 0, 0, 0.5, 0.5});
    EXPECT_EQ(trimmed_edges(told_line(piece)), std::vector<std::string>{"edge 1"});
}

// One line crosses another within a millionth of a millimetre of a point of it; the slit between them is
// closed, and what comes in its place belongs to the longer side.
TEST(trimmed_places, of_a_line_that_crosses_another_at_its_point) {
    Piece piece = straight_piece({{70.08987009126399, 155.26048},
                                  {0, 155.26048},
                                  {0, 0},
                                  {277.02048000000002, 0},
                                  {277.02048000000002, 155.26048},
                                  {123.824465908736, 155.26048},
                                  {127.271640551616, 107.85091612959999},
                                  {93.651250378751996, 107.85091612959999}},
                                 {0.5, 0.5, 0.5, 0.5, 0.5, 12.394016499999999, 0, 24.353522999999999});
    const Point from{123.824465908736, 155.26048};
    const Point to{127.271640551616, 107.85091612959999};
    const Vector out = 0.01439176 * perpendicular(to - from);
    piece.outline.items[5].as_edge()->shape =
        CubicShape{{between(from, to, 0.3) + out, between(from, to, 0.7) + out}};
    EXPECT_EQ(trimmed_edges(told_line(piece)), (std::vector<std::string>{"edge 5", "edge 6", "edge 7"}));
}

}  // namespace
}  // namespace dartwright
