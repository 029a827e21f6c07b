// The cutting line beside the buffers of other libraries, in one run. Those have one width all round and work
// on a polygon; ours has a width an edge and works on the curves, or, in the rows `of_polygon`, on the same
// polygon.

#include <benchmark/benchmark.h>
#include <geos_c.h>

#include <boost/geometry.hpp>
#include <cmath>
#include <polyclipping/clipper.hpp>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace {

using namespace dartwright;

constexpr double width_mm = 15;

// A front bodice without darts: waist, side, armhole, shoulder, neck, centre front.
Piece bodice() {
    Piece piece;
    piece.name = "front";
    piece.outline.start = {0, 0};
    const auto line = [&](const char* edge, Point to) {
        piece.outline.items.push_back({EdgeItem{edge, StraightShape{}, 0}, to});
    };
    const auto curve = [&](const char* edge, Point first, Point second, Point to) {
        piece.outline.items.push_back({EdgeItem{edge, CubicShape{{first, second}}, 0}, to});
    };
    curve("waist", {70, 6}, {140, 10}, {220, 4});
    line("side", {246, 214});
    curve("armhole", {199.6, 212.4}, {166, 237.7}, {166, 270});
    curve("armhole", {166, 316}, {171, 360.3}, {176, 374});
    line("shoulder", {72, 412});
    curve("neck", {57.8, 373}, {24, 334}, {0, 334});
    line("centre front", {0, 0});
    return piece;
}

// The same with a neck whose lower end is drawn so tight that the allowance runs into itself.
Piece tight_bodice() {
    Piece piece = bodice();
    piece.outline.items[5].as_edge()->shape = CubicShape{{Point{57, 352}, Point{64, 328}}};
    piece.outline.items[2].as_edge()->shape = CubicShape{{Point{150, 210}, Point{164, 200}}};
    return piece;
}

std::vector<Point> polygon_of(const Piece& piece, double chord_error_mm) {
    return flat_outline(piece.outline, DartsDrawn::to_points, chord_error_mm).points;
}

// As many corners on an outline that waves in and out by little.
std::vector<Point> round(int corners) {
    std::vector<Point> out;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * pi * i / corners;
        const double radius = 300 + 40 * std::sin(5 * angle);
        out.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    return out;
}

// The same with twelve nicks too narrow for the allowance.
std::vector<Point> nicked(int corners) {
    std::vector<Point> out = round(corners);
    for (int k = 0; k < 12; ++k) {
        const auto i = static_cast<std::size_t>(k * corners / 12);
        out[i] = Point{} + 0.8 * (out[i] - Point{});
    }
    return out;
}

Piece piece_of(const std::vector<Point>& polygon) {
    Piece piece;
    piece.name = "piece";
    piece.outline.start = polygon.front();
    for (std::size_t i = 1; i <= polygon.size(); ++i) {
        piece.outline.items.push_back({EdgeItem{"edge", StraightShape{}, 0}, polygon[i % polygon.size()]});
    }
    return piece;
}

enum BenchedShape { bodice_104, bodice_220, edges_1000, tight, nicks_1000 };

std::vector<Point> polygon_named(long shape) {
    switch (shape) {
        case bodice_104:
            return polygon_of(bodice(), 0.05);
        case bodice_220:
            return polygon_of(bodice(), 0.01);
        case edges_1000:
            return round(1000);
        case tight:
            return polygon_of(tight_bodice(), 0.01);
        default:
            return nicked(1000);
    }
}

void say(benchmark::State& state, std::size_t corners, std::size_t points) {
    state.counters["corners"] = static_cast<double>(corners);
    state.counters["points"] = static_cast<double>(points);
}

void run_cutting_line(benchmark::State& state, Piece piece) {
    for (const Run& run : runs_of(piece.outline)) piece.allowance.emplace_back(run.edge, width_mm);
    for (auto _ : state) benchmark::DoNotOptimize(cutting_line(piece));
    const CuttingLine line = cutting_line(piece);
    say(state, piece.outline.items.size(), line.points.size());
    state.SetLabel(line.is_cleaned ? "cleaned" : "clean");
}

void cutting_line_of_curves(benchmark::State& state) {
    run_cutting_line(state, state.range(0) == tight ? tight_bodice() : bodice());
}

void cutting_line_of_polygon(benchmark::State& state) {
    run_cutting_line(state, piece_of(polygon_named(state.range(0))));
}

void crossing_check_alone(benchmark::State& state) {
    CuttingRequest request;
    request.undecided_mm = width_mm;
    const CuttingLine line = cutting_line(piece_of(polygon_named(state.range(0))), request);
    for (auto _ : state) benchmark::DoNotOptimize(is_simple(line.points));
}

void geos_buffer(benchmark::State& state) {
    const std::vector<Point> polygon = polygon_named(state.range(0));
    const GEOSContextHandle_t geos = GEOS_init_r();
    const auto count = static_cast<unsigned>(polygon.size());
    GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(geos, count + 1, 2);
    for (unsigned i = 0; i <= count; ++i) {
        GEOSCoordSeq_setXY_r(geos, sequence, i, polygon[i % count].x, polygon[i % count].y);
    }
    GEOSGeometry* shape =
        GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, sequence), nullptr, 0);
    for (auto _ : state) {
        GEOSGeometry* out =
            GEOSBufferWithStyle_r(geos, shape, width_mm, 8, GEOSBUF_CAP_ROUND, GEOSBUF_JOIN_MITRE, 4);
        benchmark::DoNotOptimize(out);
        GEOSGeom_destroy_r(geos, out);
    }
    GEOSGeom_destroy_r(geos, shape);
    GEOS_finish_r(geos);
    say(state, polygon.size(), 0);
}

void clipper_offset(benchmark::State& state) {
    constexpr double units_in_mm = 1e5;
    const std::vector<Point> polygon = polygon_named(state.range(0));
    ClipperLib::Path path;
    for (const Point p : polygon) {
        path.emplace_back(static_cast<ClipperLib::cInt>(p.x * units_in_mm),
                          static_cast<ClipperLib::cInt>(p.y * units_in_mm));
    }
    ClipperLib::Paths out;
    for (auto _ : state) {
        ClipperLib::ClipperOffset offset(4);
        offset.AddPath(path, ClipperLib::jtMiter, ClipperLib::etClosedPolygon);
        offset.Execute(out, width_mm * units_in_mm);
        benchmark::DoNotOptimize(out);
    }
    say(state, polygon.size(), out.empty() ? 0 : out[0].size());
}

void boost_buffer(benchmark::State& state) {
    namespace bg = boost::geometry;
    using Place = bg::model::d2::point_xy<double>;
    using Polygon = bg::model::polygon<Place, false>;
    const std::vector<Point> polygon = polygon_named(state.range(0));
    Polygon shape;
    for (const Point p : polygon) bg::append(shape.outer(), Place(p.x, p.y));
    bg::correct(shape);
    const bg::strategy::buffer::distance_symmetric<double> distance(width_mm);
    const bg::strategy::buffer::side_straight side;
    const bg::strategy::buffer::join_miter join(4);
    const bg::strategy::buffer::end_flat end;
    const bg::strategy::buffer::point_circle circle(32);
    for (auto _ : state) {
        bg::model::multi_polygon<Polygon> out;
        bg::buffer(shape, out, distance, side, join, end, circle);
        benchmark::DoNotOptimize(out);
    }
    say(state, polygon.size(), 0);
}

BENCHMARK(cutting_line_of_curves)->Arg(bodice_220)->Arg(tight);
void all_shapes(benchmark::internal::Benchmark* bench) {
    for (const long shape : {bodice_104, bodice_220, edges_1000, tight, nicks_1000}) bench->Arg(shape);
}
BENCHMARK(cutting_line_of_polygon)->Apply(all_shapes);
BENCHMARK(crossing_check_alone)->Apply(all_shapes);
BENCHMARK(geos_buffer)->Apply(all_shapes);
BENCHMARK(clipper_offset)->Apply(all_shapes);
BENCHMARK(boost_buffer)->Apply(all_shapes);

}  // namespace

BENCHMARK_MAIN();
