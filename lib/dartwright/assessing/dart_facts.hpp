#pragma once

// Private to this room.

#include "dartwright/assessing/draft_facts.hpp"
#include "dartwright/assessing/mouth_sides.hpp"

namespace dartwright {

/// By how much the legs differ, beyond what is expected. `found` is set.
double legs_off_mm(const DartFact& fact);
/// A dart as it was asked for, measured in a piece of the draft, against the one that it was made from.
/// `found` is set already.
void measure_dart(DartFact& fact, const MovedPiece& piece);

}  // namespace dartwright
