#pragma once

// Private to the room: where the two sides of a seam meet at one of its ends, and which edges cross it there.

#include <array>
#include <string>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// One side's run at the seam's end.
struct SideEnd {
    std::size_t piece = 0;
    std::string edge;
    RunEnd end = RunEnd::end;
    std::string crossing;  ///< the edge beside it there
};
struct SeamEndFound {
    std::size_t seam = 0;
    bool is_start = false;  ///< where the seam's walk begins
    std::array<SideEnd, 2> sides;
    bool is_with_itself = false;  ///< both sides are one edge: a piece joined to its mirror image
    bool is_free = false;         ///< the file says that the corner is not meant to run on
};

/// The end that the name means on the first side, else on the second (by the edge that crosses there, or
/// `start` and `end` for a run whose neighbours have one name). UnknownName for the seam or the end.
SeamEndFound seam_end_named(const Pattern& pattern, const std::string& seam, const std::string& end);

/// Impossible where no edge can be drawn smooth over that end: a dart in the corner, a fold that crosses, two
/// sides that meet there in one piece, a piece whose outline does not close within `gap_mm`.
void refuse_untruable(const Pattern& pattern, const SeamEndFound& found, double gap_mm);

/// Which sides move: `move` is `both`, a piece of one side, or 1 or 2. BadWords for others.
std::array<bool, 2> sides_moved(const Pattern& pattern, const Seam& seam, const std::string& move);

/// By how much each side's run at that end is to grow so that the seam's difference is 0, sewn, mm.
/// Half on each where both move. BadWords as above; Impossible if moving that end does not change the
/// difference.
std::array<double, 2> moves_of_sides(const Pattern& pattern, const SeamEndFound& found,
                                     const std::string& move);

/// The two sides' angles at that end, degrees; together 180 where what crosses runs on, equal where the one
/// lies on the other.
std::array<double, 2> corners_deg(const Pattern& pattern, const SeamEndFound& found);

}  // namespace dartwright
