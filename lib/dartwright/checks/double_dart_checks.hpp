#pragma once

// Private to this room.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// dart-legs and dart-crossing of the double-pointed darts inside the piece. Precondition: it is closed.
PlacedFindings double_dart_findings(const PieceContext& piece, const Tolerances& tolerances);

}  // namespace dartwright
