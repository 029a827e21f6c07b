#pragma once

// Private to the room: what every operation on a dart asks of a piece before it begins.

#include <string>
#include <vector>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// The piece with its outline closed exactly and with the pivots that count as one with this dart's set to
/// it; each change is said in `notes`. Impossible if the outline is open by more than the tolerance `gap`.
Piece prepared_piece(const Piece& piece, std::size_t dart, const Tolerances& tolerances, Notes notes);

}  // namespace dartwright
