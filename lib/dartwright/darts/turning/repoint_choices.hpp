#pragma once

// Private to the room: which darts a request for a new point or pivot moves, and where to.

#include <string>
#include <vector>

#include "dartwright/darts/repoint.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// One dart and what it is to aim at.
struct DartMove {
    std::string dart;
    Point pivot;
    double back_off_mm = 0;
    bool is_asked = false;  ///< the back-off was asked for: one that the dart asks for becomes this one
};
struct PlannedMoves {
    std::vector<DartMove> darts;  ///< in outline order
    Point old_pivot;
    Point pivot;
    double span_mm = 0;
    Unit unit = Unit::mm;  ///< of the pattern
};

/// Throws BadWords unless exactly one of back-off, point and pivot is given, with what goes with it, all
/// finite.
void refuse_bad_request(const RepointRequest& request);

/// The dart whose pivot is meant: the one named, else one at `from`, else any, if all aim at one pivot.
/// Throws UnknownName, BadWords (no pivot there; several, and none named), Impossible (no darts).
std::size_t dart_meant(const Piece& piece, const RepointRequest& request);

/// Precondition: pivots that count as one are one. Each dart's mouth is judged about the pivot; Impossible if
/// its legs differ by more than `legs_mm` or it is shut, or where a point asked for is not on the centre line
/// between pivot and mouth, or further off than half the leg.
PlannedMoves planned_moves(const Piece& piece, std::size_t dart, const RepointRequest& request,
                           double legs_mm, Notes notes);

/// `(391.5, 170.0) mm`
Sentence words_of_place(Point p);

}  // namespace dartwright
