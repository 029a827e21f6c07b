#pragma once

// Private to the room: what lies inside a piece (grain, marks, double darts) when a part of the piece turns.

#include <string>
#include <vector>

#include "dartwright/geometry/motion.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// A part of a piece that turns: its polygon, and the straight stretches of its border that were inside the
/// piece (the cut, and the dart's leg drawn to the pivot).
struct TurningPart {
    std::vector<Point> polygon;       ///< anticlockwise
    std::vector<Point> held_polygon;  ///< the part that stays
    std::vector<Segment> inner_borders;
    /// Of each dart that closes or is left open between the parts, drawn to the pivot: no cloth.
    std::vector<std::vector<Point>> wedges;
    Motion motion;
};

/// 0 inside the polygon, else the distance to its border, mm.
double distance_outside(const std::vector<Point>& polygon, Point p);

/// Whether a place goes with the turning part: inside it, or on its border and not on the other part's; a
/// place in neither goes with the part whose border is nearer.
bool is_turning(const TurningPart& part, Point p);

/// Marks with what lies in the part turned. Lines that cross into it are divided there, what of a line lies
/// in the closing dart's wedge is left out (it was drawn on no cloth), and lines of one name that now run on
/// straight into each other are made one.
std::vector<Mark> turned_marks(const std::vector<Mark>& marks, const TurningPart& part);

/// The marks of each part where they are, divided in the same way. A drill mark on the border of both is on
/// both.
struct MarksOfParts {
    std::vector<Mark> turning;
    std::vector<Mark> held;
};
MarksOfParts marks_of_parts(const std::vector<Mark>& marks, const TurningPart& part);

/// Name of a double dart that the part's inner borders cross, or empty.
std::string crossed_double_dart(const Piece& piece, const TurningPart& part);
std::vector<DoubleDart> turned_double_darts(std::vector<DoubleDart> darts, const TurningPart& part);

}  // namespace dartwright
