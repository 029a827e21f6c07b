#pragma once

// Patterns of somebody else that are very like the one that was handed out: the same block for another
// wearer, or stretched one way.

#include <algorithm>
#include <array>

#include "assessing/drafts.hpp"

namespace dartwright::testing {

/// Every point of the outline and its darts.
template <class Change>
void change_points(Piece& piece, Change change) {
    change(piece.outline.start);
    for (OutlineItem& item : piece.outline.items) {
        change(item.to);
        if (DartItem* dart = item.as_dart()) {
            change(dart->point);
            if (dart->pivot) change(*dart->pivot);
            continue;
        }
        Shape& shape = item.as_edge()->shape;
        if (auto* cubic = std::get_if<CubicShape>(&shape))
            for (Point& p : cubic->controls) change(p);
        if (auto* spline = std::get_if<SplineShape>(&shape))
            for (Point& p : spline->through) change(p);
    }
    if (piece.grain) {
        change(piece.grain->from);
        change(piece.grain->to);
    }
}

/// One direction of a piece in three zones, each so many times as long.
struct Zones {
    double low = 0;
    double high = 1;
    std::array<double, 2> ends{};  ///< of the first two, as shares
    std::array<double, 3> times{1, 1, 1};

    double at(double value) const {
        const double size = high - low;
        const std::array<double, 3> to{low + ends[0] * size, low + ends[1] * size, high};
        double from = low;
        double out = low;
        for (std::size_t i = 0; i < to.size(); ++i) {
            const bool is_here = value <= to[i] || i + 1 == to.size();
            out += times[i] * ((is_here ? value : to[i]) - from);
            if (is_here) break;
            from = to[i];
        }
        return out;
    }
};

struct Box {
    Point low{1e9, 1e9};
    Point high{-1e9, -1e9};
};
inline Box box_of(Piece piece) {
    Box box;
    change_points(piece, [&](Point& p) {
        box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
        box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    });
    return box;
}

inline double any_other_measure(double least, double most) {
    const double by = real_between(least, most);
    return *evenly(0, 2) == 0 ? 1 + by : 1 - by;
}

/// The block for a wearer of whom each measure is another one by that share: neck width, shoulder, depth of
/// the armhole and side in common, chest or back width and the length above the armhole of each piece alone.
struct OtherWearer {
    double least = 0.04;
    double most = 0.15;
};
inline Pattern for_other_wearer(Pattern block, const OtherWearer& wearer = {}) {
    const auto measure = [&] { return any_other_measure(wearer.least, wearer.most); };
    const double neck = measure();
    const double shoulder = measure();
    const double side = measure();
    const double depth = measure();
    for (Piece& piece : block.pieces) {
        const Box box = box_of(piece);
        const Zones across{box.low.x, box.high.x, {0.3, 0.65}, {neck, shoulder, measure()}};
        const Zones upwards{box.low.y, box.high.y, {0.45, 0.75}, {side, depth, measure()}};
        change_points(piece, [&](Point& p) { p = {across.at(p.x), upwards.at(p.y)}; });
    }
    return block;
}

inline Pattern stretched(Pattern block, double across, double upwards) {
    for (Piece& piece : block.pieces)
        change_points(piece, [&](Point& p) { p = {across * p.x, upwards * p.y}; });
    return block;
}

}  // namespace dartwright::testing
