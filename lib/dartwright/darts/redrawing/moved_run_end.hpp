#pragma once

// Private to the room: a run made longer or shorter at one of its ends, along its own edge.

#include "dartwright/pattern/outline.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// The mirror image that makes an outline's start ends its end ends and the other way round: in the y axis,
/// so that mirrored twice it is the same to the last bit.
Outline turned_over(const Outline& outline);

/// How much of a curved edge's end is drawn into its continuation, mm: so that no strip of a fraction of a
/// millimetre is left, of which an edge should not consist.
inline constexpr double continued_mm = 10;

/// A run's end, and by how much it grows there, sewn, mm; negative to shorten it.
struct RunEndMove {
    std::string edge;
    RunEnd end = RunEnd::end;
    double by_mm = 0;
};
/// The outline with that end moved: a shortened edge is cut, a lengthened one goes on in the direction in
/// which it ended. The item next to it is brought to the new end. Impossible if that takes away all of
/// the edge up to its other end or to a dart. Precondition: no dart stands at that end.
Outline with_run_end_moved(const Outline& outline, const RunEndMove& move);

}  // namespace dartwright
