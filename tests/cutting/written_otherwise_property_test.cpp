// The cutting line has the same shape however the outline is written.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "support/generated_seams.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright {
namespace {

using namespace testing;

double distance_to(const std::vector<Point>& polygon, Point p) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Vector along = polygon[(i + 1) % polygon.size()] - a;
        const double size = squared_norm(along);
        const double t = size > 0 ? std::clamp(dot(p - a, along) / size, 0.0, 1.0) : 0;
        least = std::min(least, distance(p, a + t * along));
    }
    return least;
}

void expect_same_line(const std::vector<Point>& a, const std::vector<Point>& b, double tolerance) {
    for (const Point p : a) RC_ASSERT(distance_to(b, p) <= tolerance);
    for (const Point p : b) RC_ASSERT(distance_to(a, p) <= tolerance);
}

Piece any_cut_piece() {
    Piece piece = *rc::gen::arbitrary<bool>() ? any_piece(true, *rc::gen::inRange(1, 3)).pattern.pieces[0]
                                              : any_seam().pattern.pieces[0];
    for (const Run& run : runs_of(piece.outline)) {
        const double width = *rc::gen::inRange(0, 3) == 0 ? 0 : real_between(2, 15);
        piece.allowance.emplace_back(run.edge, width);
    }
    return piece;
}

RC_GTEST_PROP(CuttingLineIsTheSame, WrittenOtherwise, ()) {
    const Piece piece = any_cut_piece();
    Piece otherwise = piece;
    Writing writing;
    writing.may_divide = *rc::gen::arbitrary<bool>();
    otherwise.outline = written_otherwise(piece.outline, writing);
    const CuttingLine line = cutting_line(piece);
    const CuttingLine same = cutting_line(otherwise);
    // The parts of a divided curve are flattened each on its own.
    expect_same_line(line.points, same.points, writing.may_divide ? 2 * cutting_line_error_mm : 1e-5);
    RC_ASSERT(line.darts.size() == same.darts.size());
    for (const CutDart& dart : line.darts) {
        const auto found = std::find_if(same.darts.begin(), same.darts.end(),
                                        [&](const CutDart& other) { return other.dart == dart.dart; });
        RC_ASSERT(found != same.darts.end());
        RC_ASSERT(otherwise.outline.items[found->item].as_dart()->name == dart.dart);
        RC_ASSERT(distance(found->tip, dart.tip) <= 2 * cutting_line_error_mm);
        RC_ASSERT(found->is_capped == dart.is_capped);
    }
    for (const CutSide& side : same.sides) RC_ASSERT(side.item < otherwise.outline.items.size());
}

// A listing that begins with an edge of no length and goes on with a dart once lost the dart.
TEST(CuttingLineIsTheSame, BegunWithAPointAndADart) {
    GeneratedPiece generated;
    Piece piece;
    piece.name = "front";
    piece.outline.start = {0, 0};
    DartItem dart;
    dart.name = "dart";
    dart.point = {10, 100};
    piece.outline.items = {
        {EdgeItem{"hem", StraightShape{}, 0}, {0, 0}},   {dart, {20, 0}},
        {EdgeItem{"hem", StraightShape{}, 0}, {200, 0}}, {EdgeItem{"side", StraightShape{}, 0}, {200, 300}},
        {EdgeItem{"top", StraightShape{}, 0}, {0, 300}}, {EdgeItem{"centre", StraightShape{}, 0}, {0, 0}}};
    for (const char* edge : {"hem", "side", "top", "centre"}) piece.allowance.emplace_back(edge, 10.0);
    const CuttingLine line = cutting_line(piece);
    ASSERT_EQ(line.darts.size(), 1U);
    EXPECT_EQ(line.darts[0].item, 1U);
    for (const Point p : line.points) EXPECT_TRUE(std::isfinite(p.x) && std::isfinite(p.y));
}

// A run that is one point is left out with its corners; an outline of points is refused.
TEST(CuttingLineIsTheSame, OfARunThatIsOnePoint) {
    Piece piece;
    piece.name = "triangle";
    piece.outline.start = {0, 0};
    const auto add = [&](const char* edge, Point to) {
        piece.outline.items.push_back({EdgeItem{edge, StraightShape{}, 0}, to});
        piece.allowance.emplace_back(edge, 10.0);
    };
    add("hem", {100, 0});
    add("point", {100, 0});
    add("side", {0, 100});
    add("centre", {0, 0});
    CuttingRequest request;
    request.corners.push_back({{"hem", "point"}, CornerKind::met, "", {}});
    const CuttingLine line = cutting_line(piece, request);
    // The triangle of the same middle whose inner circle is larger by the width.
    const double inner = (200 - 100 * std::sqrt(2.0)) / 2;
    EXPECT_NEAR(signed_area(line.points), 5000 * std::pow((inner + 10) / inner, 2), 1e-6);
    for (OutlineItem& item : piece.outline.items) item.to = {0, 0};
    EXPECT_THROW(cutting_line(piece), Impossible);
}

}  // namespace
}  // namespace dartwright
