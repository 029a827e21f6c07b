#pragma once

// Private to this room.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// grain-missing, grain-direction, fold-straight, fold-corner and cut-missing: what a piece needs to be laid
/// on the cloth. Precondition: the piece is closed.
PlacedFindings cut_findings(const PieceContext& piece, const Tolerances& tolerances);

/// Whether the run is a fold that fold-straight finds fault with. What else is wrong along it follows from
/// that.
bool is_bowed_fold(const PieceContext& piece, const Run& run, const Tolerances& tolerances);

}  // namespace dartwright
