#pragma once

// Private to the room: the dart that an operation opens, its name, its point and its place among the others.

#include <optional>
#include <string>

#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The name of a dart that opens: the one wanted, else the old name for a whole dart, else `EDGE dart`, with
/// a number if that is taken. BadWords if another dart of the piece has the name wanted.
struct NameQuestion {
    std::string wanted;
    std::string edge;
    bool is_all = true;
};
std::string name_chosen(const Piece& piece, std::size_t dart, const NameQuestion& question);

/// The back-off wanted, else that of the old dart. BadWords if it is negative, Impossible if it is over half
/// of the leg, drawn to the pivot.
double back_off_chosen(std::optional<double> wanted_mm, const DartFigures& old, double leg_mm);

struct NewDart {
    std::string name;
    std::string press;
    double back_off = 0;
};
/// The dart with its mouth from the first point to the second, both at one distance from the old dart's
/// pivot, and its point backed off along the bisector. A least back-off asked of the old dart is asked of
/// this one, or as much of it as there is. A tuck stays one, unless it is stitched
/// further than the new legs are long.
OutlineItem opened_dart(const DartItem& old, const NewDart& fresh, PairOfPoints mouth);

}  // namespace dartwright
