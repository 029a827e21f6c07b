#pragma once

// Private to the room: a line with what each of its sides belongs to.

#include <vector>

#include "dartwright/cutting/cutting_line.hpp"

namespace dartwright::cutting {

/// A point of the cutting line before it is cleaned, and what the side that begins at it belongs to.
struct RawPoint {
    Point at;
    CutSide side;
};

// Number by number: what is put together in one place and copied from there to the end of a list is read back
// before it is written, for which a processor waits longer than for all the arithmetic of a point.
inline void put_new(std::vector<Point>& points, Point at) {
    Point& made = points.emplace_back();
    made.x = at.x;
    made.y = at.y;
}
inline void put_new_side(std::vector<CutSide>& sides, const CutSide& side) {
    CutSide& made = sides.emplace_back();
    made.part = side.part;
    made.item = side.item;
    made.width_mm = side.width_mm;
}

/// Closed; side i begins at points[i]. Two lists of one length, as the cutting line is handed out: what asks
/// for places alone, as most of the clean-up does, reads these alone and copies nothing.
struct SidedLine {
    std::vector<Point> points;
    std::vector<CutSide> sides;

    std::size_t size() const { return points.size(); }
    void reserve(std::size_t size) {
        points.reserve(size);
        sides.reserve(size);
    }
    void add(Point at, const CutSide& side) {
        put_new(points, at);
        put_new_side(sides, side);
    }
    void pop_back() {
        points.pop_back();
        sides.pop_back();
    }
};

}  // namespace dartwright::cutting
