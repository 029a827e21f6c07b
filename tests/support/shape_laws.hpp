#pragma once

// What properties of operations say of shapes: lengths, angles and places kept, within stated rounding.

#include <rapidcheck.h>

#include <cmath>
#include <string>
#include <vector>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

// Coordinates reach some 3,000 mm, of which a unit in the last place is 4.5e-13 mm; a turn about a pivot
// costs a few of them, a cut of a curve some more. A thousand of them is still far below any trade tolerance.
inline constexpr double rounding_mm = 1e-9;
// Arc lengths are each good to 1e-9 of themselves.
inline double length_rounding(double length) {
    return 2e-9 * length + rounding_mm;
}

inline double total_angle(const Piece& piece, Point pivot) {
    double sum = 0;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (!piece.outline.items[i].as_dart()) continue;
        const DartFigures f = figures_of(piece.outline, i);
        if (f.pivot == pivot) sum += f.angle_rad;
    }
    return sum;
}

inline void expect_same_runs(const Piece& before, const Piece& after, double scale = 1) {
    const std::vector<Run> a = runs_of(before.outline);
    const std::vector<Run> b = runs_of(after.outline);
    RC_ASSERT(a.size() == b.size());
    for (const Run& run : a) {
        const Run* same = find_run(b, run.edge);
        RC_ASSERT(same != nullptr);
        RC_ASSERT(std::abs(run.length * scale - same->length) <= length_rounding(same->length));
    }
}

// Joints and mouths stand at simple shares of a run in shrunk cases; samples keep away from them, since there
// rounding decides on which side of a mouth the place is taken.
inline constexpr double off_joints = 0.41421356;

inline std::vector<Point> samples(const Piece& piece, int per_run) {
    std::vector<Point> out;
    for (const Run& run : runs_of(piece.outline)) {
        for (int k = 0; k < per_run; ++k) {
            out.push_back(place_on_run(piece.outline, run, run.length * (k + off_joints) / per_run).point);
        }
    }
    return out;
}

// Samples matched by run name, since an outline may begin at another run.
inline std::vector<Point> samples_like(const Piece& piece, const Piece& order, int per_run) {
    std::vector<Point> out;
    const std::vector<Run> runs = runs_of(piece.outline);
    for (const Run& named : runs_of(order.outline)) {
        const Run& run = *find_run(runs, named.edge);
        for (int k = 0; k < per_run; ++k) {
            out.push_back(place_on_run(piece.outline, run, run.length * (k + off_joints) / per_run).point);
        }
    }
    return out;
}

inline void expect_same_points(const std::vector<Point>& a, const std::vector<Point>& b, double tolerance) {
    RC_ASSERT(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) RC_ASSERT(distance(a[i], b[i]) <= tolerance);
}

// Places along a run are found to 1e-9 mm and 1e-9 of its arc length.
inline double place_tolerance(const GeneratedPiece& piece) {
    return 4e-9 * piece.size_mm + rounding_mm;
}

inline std::string place_of_dart(const Piece& piece, const std::string& dart) {
    for (const Run& run : runs_of(piece.outline)) {
        const std::vector<double> mouths = dart_distances(piece.outline, run);
        for (std::size_t k = 0; k < mouths.size(); ++k) {
            if (piece.outline.items[run.darts[k]].as_dart()->name != dart) continue;
            return to_text(Place{run.edge, {mouths[k], false}, name_of_end(run, RunEnd::start)});
        }
        for (const std::size_t d : run.corner_darts_after) {
            if (piece.outline.items[d].as_dart()->name != dart) continue;
            return to_text(Place{run.edge, {0, false}, name_of_end(run, RunEnd::end)});
        }
    }
    return {};
}

/// The same shape, whichever way it was turned and shifted.
inline void expect_same_shape(const Piece& a, const Piece& b, int per_run, double tolerance) {
    std::vector<Point> of_a = samples(a, per_run);
    const std::vector<Point> of_b = samples_like(b, a, per_run);
    const Motion fit = best_fit(of_a, of_b);
    for (Point& p : of_a) p = apply(fit, p);
    expect_same_points(of_a, of_b, tolerance);
}

}  // namespace dartwright::testing
