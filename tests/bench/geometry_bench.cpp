// Lengths, places and crossings, with other libraries' answers to the same questions in the same run.

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>
#include <benchmark/benchmark.h>
#include <geos_c.h>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <random>

#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/arc_length_table.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace {

using namespace dartwright;

constexpr std::size_t sample_count = 256;  // a power of two

// Curves as on a bodice: handles about a third of the chord, some bend.
std::vector<Cubic> plain_curves() {
    std::mt19937_64 random(20240501);
    std::uniform_real_distribution<double> offset(-40, 40);
    std::vector<Cubic> out(sample_count);
    for (Cubic& c : out) {
        for (std::size_t i = 0; i < 4; ++i) {
            c.p[i] = {100.0 * static_cast<double>(i) + offset(random), offset(random)};
        }
    }
    return out;
}

// (t^2, t^3) for t from -1 to 0.8, a control point moved by 1e-12 to 1 of the size.
std::vector<Cubic> curves_near_cusps() {
    std::mt19937_64 random(20240502);
    std::uniform_real_distribution<double> exponent(-12, 0);
    std::vector<Cubic> out(sample_count);
    for (Cubic& c : out) {
        c = {{Point{100, -100}, {-60, 80}, {0, -64}, {64, 51.2}}};
        const double low = -1;
        const double high = 0.8;
        c.p[1] = {100 * (low * low + 2 * low * high) / 3, 100 * low * low * high};
        c.p[2] = {100 * (high * high + 2 * low * high) / 3, 100 * low * high * high};
        c.p[1].x += 100 * std::pow(10.0, exponent(random));
    }
    return out;
}

double speed(const Cubic& c, double t) {
    const Vector v = derivative_at(c, t);
    return std::sqrt(v.x * v.x + v.y * v.y);
}

template <class Measure>
void measure_all(benchmark::State& state, const std::vector<Cubic>& curves, Measure measure) {
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(measure(curves[i++ % sample_count]));
}

double ours(const Cubic& c) {
    return length(c);
}
double kronrod_31(const Cubic& c) {
    using Rule = boost::math::quadrature::gauss_kronrod<double, 31>;
    return Rule::integrate([&](double t) { return speed(c, t); }, 0.0, 1.0, 0U);
}
double adaptive_kronrod_31(const Cubic& c) {
    using Rule = boost::math::quadrature::gauss_kronrod<double, 31>;
    return Rule::integrate([&](double t) { return speed(c, t); }, 0.0, 1.0, 15U, 1e-9);
}

void length_plain(benchmark::State& s) {
    measure_all(s, plain_curves(), ours);
}
void length_plain_boost_31_points(benchmark::State& s) {
    measure_all(s, plain_curves(), kronrod_31);
}
void length_plain_boost_adaptive(benchmark::State& s) {
    measure_all(s, plain_curves(), adaptive_kronrod_31);
}
void length_near_cusp(benchmark::State& s) {
    measure_all(s, curves_near_cusps(), ours);
}
void length_near_cusp_boost_adaptive(benchmark::State& s) {
    measure_all(s, curves_near_cusps(), adaptive_kronrod_31);
}
BENCHMARK(length_plain);
BENCHMARK(length_plain_boost_31_points);
BENCHMARK(length_plain_boost_adaptive);
BENCHMARK(length_near_cusp);
BENCHMARK(length_near_cusp_boost_adaptive);

// Places along one curve, in no order.
template <class Find>
void find_all(benchmark::State& state, const Cubic& c, Find find) {
    std::mt19937_64 random(20240503);
    std::uniform_real_distribution<double> distance(0, length(c));
    std::vector<double> distances(sample_count);
    for (double& d : distances) d = distance(random);
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(find(distances[i++ % sample_count]));
}

double gauss_15(const Cubic& c, double to) {
    using Rule = boost::math::quadrature::gauss<double, 15>;
    return Rule::integrate([&](double t) { return speed(c, t); }, 0.0, to);
}

void place_from_table(benchmark::State& s) {
    const Cubic c = plain_curves()[0];
    const ArcLengthTable table(c);
    find_all(s, c, [&](double d) { return table.parameter_at(d); });
}
void place_from_table_near_cusp(benchmark::State& s) {
    const Cubic c = curves_near_cusps()[0];
    const ArcLengthTable table(c);
    find_all(s, c, [&](double d) { return table.parameter_at(d); });
}
void place_without_table(benchmark::State& s) {
    const Cubic c = plain_curves()[0];
    find_all(s, c, [&](double d) { return parameter_at(c, d); });
}
void place_by_bisection(benchmark::State& s) {
    const Cubic c = plain_curves()[0];
    const double tolerance = 1e-6 / length(c);
    find_all(s, c, [&](double d) {
        double low = 0;
        double high = 1;
        while (high - low > tolerance) {
            const double t = 0.5 * (low + high);
            (gauss_15(c, t) < d ? low : high) = t;
        }
        return low;
    });
}
void place_by_newton_over_quadrature(benchmark::State& s) {
    const Cubic c = plain_curves()[0];
    const double whole = length(c);
    find_all(s, c, [&](double d) {
        double t = d / whole;
        for (int i = 0; i < 20; ++i) {
            const double excess = gauss_15(c, t) - d;
            if (std::abs(excess) < 1e-6) break;
            t -= excess / speed(c, t);
        }
        return t;
    });
}
void table_built(benchmark::State& s) {
    measure_all(s, plain_curves(), [](const Cubic& c) { return ArcLengthTable(c).length(); });
}
void table_built_near_cusp(benchmark::State& s) {
    measure_all(s, curves_near_cusps(), [](const Cubic& c) { return ArcLengthTable(c).length(); });
}
BENCHMARK(place_from_table);
BENCHMARK(place_from_table_near_cusp);
BENCHMARK(place_without_table);
BENCHMARK(place_by_bisection);
BENCHMARK(place_by_newton_over_quadrature);
BENCHMARK(table_built);
BENCHMARK(table_built_near_cusp);

// A front bodice: waist with a dart, side with a dart, armhole, shoulder, neck, centre front (mm).
std::vector<Point> bodice(double chord_error_mm) {
    const std::vector<Curve> outline{Line{{0, 0}, {70, 2}},
                                     Line{{70, 2}, {88, 150}},
                                     Line{{88, 150}, {104, 3}},
                                     Cubic{{Point{104, 3}, {150, 5}, {200, 10}, {235, 16}}},
                                     Cubic{{Point{235, 16}, {238, 50}, {243, 90}, {247, 120}}},
                                     Line{{247, 120}, {110, 170}},
                                     Line{{110, 170}, {250, 140}},
                                     Cubic{{Point{250, 140}, {251, 160}, {252, 180}, {253, 200}}},
                                     Cubic{{Point{253, 200}, {205, 205}, {190, 230}, {186, 275}}},
                                     Cubic{{Point{186, 275}, {182, 310}, {190, 350}, {205, 385}}},
                                     Line{{205, 385}, {75, 425}},
                                     Cubic{{Point{75, 425}, {70, 380}, {50, 350}, {0, 345}}},
                                     Line{{0, 345}, {0, 0}}};
    std::vector<Point> polygon;
    for (const Curve& curve : outline) flatten_onto(polygon, curve, chord_error_mm);
    return polygon;
}

std::vector<Point> outline_of(std::int64_t corners) {
    double high = 10;
    double low = 1e-6;
    while (high / low > 1.0001) {
        const double error = std::sqrt(high * low);
        (bodice(error).size() > static_cast<std::size_t>(corners) ? low : high) = error;
    }
    return bodice(high);
}

void crossings(benchmark::State& state) {
    const auto polygon = outline_of(state.range(0));
    if (!is_simple(polygon)) return state.SkipWithError("not simple");
    for (auto _ : state) benchmark::DoNotOptimize(self_crossings(polygon));
    state.counters["corners"] = static_cast<double>(polygon.size());
}
void crossings_geos_is_valid(benchmark::State& state) {
    const auto polygon = outline_of(state.range(0));
    const GEOSContextHandle_t geos = GEOS_init_r();
    GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(geos, static_cast<unsigned>(polygon.size() + 1), 2);
    for (unsigned i = 0; i <= polygon.size(); ++i) {
        const Point p = polygon[i % polygon.size()];
        GEOSCoordSeq_setXY_r(geos, sequence, i, p.x, p.y);
    }
    GEOSGeometry* shape =
        GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, sequence), nullptr, 0);
    for (auto _ : state) benchmark::DoNotOptimize(GEOSisValid_r(geos, shape));
    GEOSGeom_destroy_r(geos, shape);
    GEOS_finish_r(geos);
}
void crossings_cgal_is_simple(benchmark::State& state) {
    using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
    CGAL::Polygon_2<Kernel> polygon;
    for (const Point p : outline_of(state.range(0))) polygon.push_back({p.x, p.y});
    for (auto _ : state) benchmark::DoNotOptimize(polygon.is_simple());
}
BENCHMARK(crossings)->Arg(104)->Arg(220)->Arg(1000);
BENCHMARK(crossings_geos_is_valid)->Arg(104)->Arg(220)->Arg(1000);
BENCHMARK(crossings_cgal_is_simple)->Arg(104)->Arg(220)->Arg(1000);

}  // namespace

BENCHMARK_MAIN();
