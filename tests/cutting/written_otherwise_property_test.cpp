// The cutting line has the same shape however the outline is written.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"
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
    Piece piece = *rc::gen::arbitrary<bool>() ? any_piece(true, *testing::evenly(1, 3)).pattern.pieces[0]
                                              : any_seam().pattern.pieces[0];
    for (const Run& run : runs_of(piece.outline)) {
        const double width = *testing::evenly(0, 3) == 0 ? 0 : real_between(2, 15);
        piece.allowance.emplace_back(run.edge, width);
    }
    return piece;
}

// Each corner finished in a drawn way, or met.
CuttingRequest any_request(const Piece& piece) {
    CuttingRequest request;
    for (const Run& run : runs_of(piece.outline)) {
        const auto kind = *rc::gen::element(CornerKind::met, CornerKind::carried_on, CornerKind::blunted,
                                            CornerKind::squared, CornerKind::mirrored);
        if (run.after == run.edge) continue;
        request.corners.push_back(
            {{run.edge, run.after}, kind, *rc::gen::arbitrary<bool>() ? run.edge : run.after, {}});
    }
    return request;
}

std::vector<std::string> corners_of(const CuttingLine& line) {
    std::vector<std::string> out;
    for (const CutCorner& corner : line.corners)
        out.push_back(corner.edges[0] + "|" + corner.edges[1] + "|" + to_text(corner.kind) +
                      (corner.is_step ? "|step" : ""));
    std::sort(out.begin(), out.end());
    return out;
}

RC_GTEST_PROP(CuttingLineIsTheSame, WrittenOtherwise, ()) {
    const Piece piece = any_cut_piece();
    Piece otherwise = piece;
    Writing writing;
    writing.may_round = *rc::gen::arbitrary<bool>();
    if (!writing.may_round) writing.least_share = *rc::gen::element(0.3, 1e-2, 1e-4);
    otherwise.outline = written_otherwise(piece.outline, writing);
    const CuttingRequest request = any_request(piece);
    const CuttingLine line = cutting_line(piece, request);
    const CuttingLine same = cutting_line(otherwise, request);
    // Parts that rounding has turned are not made one again, and are flattened each on its own. A clean-up
    // moves points by some millionths of a mm, and a shallow crossing by more, up to a hundredth of the
    // error.
    const double tolerance = writing.may_round ? 2 * cutting_line_error_mm
                             : line.is_cleaned ? cutting_line_error_mm / 100
                                               : 1e-6;
    expect_same_line(line.points, same.points, tolerance);
    RC_ASSERT(line.is_cleaned == same.is_cleaned);
    RC_ASSERT(corners_of(line) == corners_of(same));
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

// A short first part of an edge once kept the hem's end from being mirrored in it.
TEST(CuttingLineIsTheSame, MirroredAtADividedEdge) {
    for (const Piece& piece :
         read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/corners/mirrored.json").pieces) {
        CuttingRequest request;
        for (const dartwright::Run& run : runs_of(piece.outline)) {
            if (run.edge != "hem") continue;
            request.corners.push_back({{"hem", run.after}, CornerKind::mirrored, "hem", {}});
            request.corners.push_back({{run.before, "hem"}, CornerKind::mirrored, "hem", {}});
        }
        ASSERT_EQ(request.corners.size(), 2U);
        const double area = signed_area(cutting_line(piece, request).points);
        for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
            for (const double t : {1e-3, 0.5, 1 - 1e-3}) {
                Piece parted = piece;
                parted.outline = divided(piece.outline, i, t);
                ASSERT_EQ(parted.outline.items.size(), piece.outline.items.size() + 1);
                EXPECT_NEAR(signed_area(cutting_line(parted, request).points), area, 1e-6) << i;
            }
        }
    }
}

// A many-sided piece, its edges straight or bowed either way, most of them with a dart that may be wider than
// it is deep; beside a bowed edge the legs may lie inside the line of the edge.
Piece any_piece_with_wide_darts() {
    const int corners = *testing::evenly(3, 7);
    const double radius = *rc::gen::element(150.0, 200.0, 400.0);
    std::vector<Point> at;
    for (int i = 0; i < corners; ++i) {
        const double turn = 2 * pi * i / corners;
        at.push_back({radius * real_between(0.7, 1.3) * std::cos(turn),
                      radius * real_between(0.7, 1.3) * std::sin(turn)});
    }
    Piece piece;
    piece.name = "piece";
    piece.outline.start = at[0];
    for (int i = 0; i < corners; ++i) {
        const std::string edge = "edge " + std::to_string(i);
        const Vector along = at[std::size_t((i + 1) % corners)] - at[std::size_t(i)];
        const double bow = *rc::gen::element(0.0, 0.1, 0.3, -0.15);
        const auto place = [&](double t, double in) {
            return at[std::size_t(i)] + t * along + in * perpendicular(along);
        };
        const auto add_edge = [&](double from, double from_in, double to, double to_in) {
            EdgeItem item{edge, StraightShape{}, 0};
            if (bow != 0) {
                const double most = from_in + to_in > 0 ? 0.7 * bow : bow;
                item.shape = CubicShape{{place(from + 0.3 * (to - from), from == 0 ? most : bow),
                                         place(from + 0.7 * (to - from), to == 1 ? most : bow)}};
            }
            piece.outline.items.push_back({item, place(to, to_in)});
        };
        piece.allowance.emplace_back(edge, *rc::gen::element(0.0, 5.0, 10.0, 15.0, 40.0));
        if (*testing::evenly(0, 4) == 0) {
            add_edge(0, 0, 1, 0);
            continue;
        }
        const double middle = *rc::gen::element(0.3, 0.5, 0.6);
        const double half = std::min(*rc::gen::element(10.0, 15.0, 22.5) / norm(along), 0.125);
        const double in = *rc::gen::element(0.0, 0.6) * bow;
        add_edge(0, 0, middle - half, in);
        DartItem dart;
        dart.name = "dart " + std::to_string(i);
        dart.point = place(middle, in + *rc::gen::element(35.0, 60.0, 120.0) / norm(along));
        dart.press = "edge " + std::to_string((i + *rc::gen::element(1, corners - 1)) % corners);
        piece.outline.items.push_back({dart, place(middle + half, in)});
        add_edge(middle + half, in, 1, 0);
    }
    return piece;
}

// The line, or none where none goes round the piece.
std::optional<CuttingLine> perhaps_line(const Piece& piece) {
    try {
        return cutting_line(piece);
    } catch (const Impossible&) {
        return std::nullopt;
    }
}

// Whether an edge beside a mouth comes over the line of its leg, so that with the dart sewn the two edges
// cross.
bool has_hooks(const Outline& outline) {
    const std::size_t n = outline.items.size();
    for (std::size_t i = 0; i < n; ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart) continue;
        const auto hooks = [&](std::size_t item, Point mouth_end, double side) {
            const Vector leg = unit(mouth_end - dart->point);
            for (const Curve& curve : curves_of_item(outline, item)) {
                for (int k = 0; k <= 100; ++k) {
                    const Vector out = point_at(curve, k / 100.0) - mouth_end;
                    if (dot(leg, out) > 0 && side * cross(leg, out) > 1e-6) return true;
                }
            }
            return false;
        };
        if (hooks((i + n - 1) % n, start_of_item(outline, i), 1)) return true;
        if (hooks((i + 1) % n, outline.items[i].to, -1)) return true;
    }
    return false;
}

RC_GTEST_PROP(CuttingLineIsTheSame, BesideWideDartsMirroredAndBegunElsewhere, ()) {
    const Piece piece = any_piece_with_wide_darts();
    RC_PRE(is_simple(flat_outline(piece.outline, DartsDrawn::to_points, 1e-3).points));
    const std::optional<CuttingLine> line = perhaps_line(piece);
    Pattern pattern;
    pattern.pieces.push_back(piece);
    RC_LOG() << write_pattern(pattern) << "\n";
    // Within the line's error all round, over two metres. Where edges hook over the legs the folded cap
    // touches them in a point, and rounding decides whether a sliver between them is cut out.
    const double same_mm2 = has_hooks(piece.outline) ? 100 : 2000 * cutting_line_error_mm;
    for (const std::size_t first :
         {std::size_t{0}, std::size_t(*testing::evenly(0, int(piece.outline.items.size())))}) {
        Piece other = piece;
        other.outline = begun_at(piece.outline, first);
        for (const Piece& each : {other, mirrored(MirrorLine{}, other)}) {
            const std::optional<CuttingLine> same = perhaps_line(each);
            RC_ASSERT(line.has_value() == same.has_value());
            if (!line) continue;
            RC_ASSERT(std::abs(signed_area(line->points) - signed_area(same->points)) < same_mm2);
            RC_ASSERT(line->notes.size() == same->notes.size());
        }
    }
    RC_CLASSIFY(has_hooks(piece.outline), "edges hook over legs");
}

// With the dart sewn both edges hook over its legs, one a little farther out than the other; which of them
// the line was parted at hung on the direction in which the outline runs.
TEST(CuttingLineIsTheSame, MirroredWhereTheEdgesHookOverTheLegs) {
    Piece piece;
    piece.name = "piece";
    piece.outline.start = {250.904, 0};
    DartItem dart;
    dart.name = "dart";
    dart.point = {120.199, 86.445};
    dart.press = "hem";
    const auto cubic = [](Point a, Point b) { return EdgeItem{"armhole", CubicShape{{a, b}}, 0}; };
    piece.outline.items = {{cubic({240.202, 45.178}, {209.85, 86.79}), {155.976, 81.974}},
                           {dart, {110.565, 121.189}},
                           {cubic({119.246, 165.032}, {89.34, 175.455}), {54.849, 169.303}},
                           {EdgeItem{"side", StraightShape{}, 0}, {-127.715, -130.9}},
                           {EdgeItem{"hem", StraightShape{}, 0}, {250.904, 0}}};
    piece.allowance = {{"armhole", 0.0}, {"side", 10.0}, {"hem", 10.0}};
    const CuttingLine line = cutting_line(piece);
    std::vector<Point> image = cutting_line(mirrored(MirrorLine{}, piece)).points;
    for (Point& p : image) p = mirrored(MirrorLine{}, p);
    for (const Point p : line.points) EXPECT_LE(distance_to(image, p), cutting_line_error_mm / 100);
    for (const Point p : image) EXPECT_LE(distance_to(line.points, p), cutting_line_error_mm / 100);
}

// Beside a width of 0 a square corner is no step, whichever way rounding turns it.
TEST(CuttingLineIsTheSame, AtASquareCornerThatIsTurned) {
    for (int degree = 0; degree < 360; ++degree) {
        Piece piece;
        piece.name = "square";
        const Vector along = 100 * Vector{std::cos(degree * M_PI / 180), std::sin(degree * M_PI / 180)};
        const Point start{12.3, 45.6};
        piece.outline.start = start;
        const auto add = [&](const char* edge, Point to, double width) {
            piece.outline.items.push_back({EdgeItem{edge, StraightShape{}, 0}, to});
            piece.allowance.emplace_back(edge, width);
        };
        const Vector up{-along.y, along.x};
        add("hem", start + along, 0);
        add("side", start + along + up, 15);
        add("top", start + up, 0);
        add("centre", start, 15);
        const CuttingLine line = cutting_line(piece);
        EXPECT_NEAR(signed_area(line.points), 13000, 1e-6) << degree;
        for (const CutCorner& corner : line.corners) EXPECT_FALSE(corner.is_step) << degree;
    }
}

// The clean-up begins at an outermost point where the line turns left: the lowest of an outline that crosses
// itself may lie on a loop, and the line that was handed out from there was the loop.
TEST(CuttingLineIsTheSame, OfAnOutlineThatCrossesItselfHoweverItIsTurned) {
    const Pattern pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/faults/outline-crossing.json");
    Piece piece = pattern.pieces.at(0);
    for (const dartwright::Run& run : runs_of(piece.outline)) piece.allowance.emplace_back(run.edge, 10.0);
    const double area = signed_area(piece.outline, DartsDrawn::to_points);
    for (int degree = 0; degree < 360; degree += 5) {
        Piece turned = piece;
        // Mirrored twice: turned by twice the angle between the lines.
        const double half = degree * M_PI / 360;
        turned.outline = mirrored(MirrorLine{{50, 50}, {std::cos(half), std::sin(half)}},
                                  mirrored(MirrorLine{{50, 50}, {1, 0}}, piece.outline));
        EXPECT_GT(signed_area(cutting_line(turned).points), area) << degree;
    }
}

}  // namespace
}  // namespace dartwright
