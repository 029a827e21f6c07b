#pragma once

// Private to this room.

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The piece so many times as large about the origin: everything with a length or a place in it, its
/// allowances too. Precondition: factor > 0.
Piece scaled(Piece piece, double factor);

}  // namespace dartwright
