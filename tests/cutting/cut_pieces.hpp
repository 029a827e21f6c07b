#pragma once

// Pieces with allowances for tests, and brute force questions about cutting lines.

#include <algorithm>
#include <vector>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

/// Straight edges from corner to corner, named `edge 0`, `edge 1` and so on, with these allowances.
inline Piece straight_piece(const std::vector<Point>& corners, const std::vector<double>& widths) {
    Piece piece;
    piece.name = "piece";
    piece.outline.start = corners.front();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const std::string edge = "edge " + std::to_string(i);
        piece.outline.items.push_back(
            {EdgeItem{edge, StraightShape{}, 0}, corners[(i + 1) % corners.size()]});
        piece.allowance.emplace_back(edge, widths[i]);
    }
    return piece;
}

/// Allowances of a doll's to a cloak's seams, none at some edges, some in stretches.
inline void add_any_allowances(Piece& piece, double widest_mm, bool may_have_stretches) {
    for (const Run& run : runs_of(piece.outline)) {
        const auto any_width = [&] { return *evenly(0, 4) == 0 ? 0.0 : real_between(0.02, 1) * widest_mm; };
        if (may_have_stretches && *evenly(0, 4) == 0) {
            const double joint = run.length * real_between(0.2, 0.8);
            const std::string from = name_of_end(run, RunEnd::start);
            piece.allowance.emplace_back(
                run.edge, std::vector<AllowanceStretch>{{from, 0, joint, any_width()},
                                                        {from, joint, run.length, any_width()}});
        } else {
            piece.allowance.emplace_back(run.edge, any_width());
        }
    }
}

inline double distance_to_item(const Outline& outline, std::size_t item, Point p) {
    double least = 1e300;
    for (const Curve& curve : curves_of_item(outline, item))
        least = std::min(least, closest_point(curve, p).distance);
    return least;
}

inline double distance_to_side(Point a, Point b, Point p) {
    const Vector along = b - a;
    const double length = squared_norm(along);
    const double share = length > 0 ? std::clamp(dot(p - a, along) / length, 0.0, 1.0) : 0;
    return distance(p, a + share * along);
}

inline double distance_to_line(const std::vector<Point>& closed, Point p) {
    double least = 1e300;
    for (std::size_t i = 0; i < closed.size(); ++i) {
        least = std::min(least, distance_to_side(closed[i], closed[(i + 1) % closed.size()], p));
    }
    return least;
}

}  // namespace dartwright::testing
