#pragma once

// Private to this room: what keeps a piece from being one.

#include "dartwright/pattern/known_runs.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The runs of its outline, for the seams. O(n) in its items, names and points, at the mean.
KnownRuns look_at_piece(ProblemList& to, const Step& at, const Piece& piece);

}  // namespace dartwright
