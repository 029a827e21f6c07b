#pragma once

// Private to this room.

#include "dartwright/assessing/draft_facts.hpp"

namespace dartwright {

/// A dart as it was asked for, measured in a piece of the draft. `found` is set already.
void measure_dart(DartFact& fact, const PieceFacts& piece, const ShapedPiece& drawn);

}  // namespace dartwright
