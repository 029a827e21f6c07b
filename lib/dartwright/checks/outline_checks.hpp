#pragma once

// Private to this room.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// An edge shorter than this was not meant: it is the rest of a slip of the pencil or of a cut, and too short
/// to sew. Larger: short real edges (the end of a stand) are called faults; smaller: strays pass.
inline constexpr double stray_edge_mm = 1;

/// outline-gap. For a piece that does not close, the only check.
PlacedFindings gap_findings(const PieceContext& piece, const Tolerances& tolerances);
/// outline-crossing, outline-stray and outline-kink. Precondition: the piece is closed.
PlacedFindings outline_findings(const PieceContext& piece, const Tolerances& tolerances);

}  // namespace dartwright
