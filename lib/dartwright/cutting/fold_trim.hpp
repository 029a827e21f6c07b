#pragma once

// Private to the room: nothing is cut beyond the fold.

#include "dartwright/cutting/cutting_line.hpp"

namespace dartwright::cutting {

/// Where an allowance reaches over the fold of the cloth, as that of a neck narrower than it is wide, the
/// line goes along the fold's line instead, and that is said. A line that would not be simple then stays as
/// it is.
void trim_at_fold(const Piece& piece, CuttingLine& line);

}  // namespace dartwright::cutting
