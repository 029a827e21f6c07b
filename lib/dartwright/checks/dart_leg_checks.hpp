#pragma once

// Private to this room.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// Whether the legs are of one length, and the mouth ends equally far from a pivot of its own.
bool are_legs_true(const DartFigures& dart, const Tolerances& tolerances);

/// dart-legs of one dart of the outline: a fault where the legs are not true; where they are, a note if they
/// are curved and not mirror images of each other. At most one finding.
PlacedFindings leg_findings(const PieceContext& piece, std::size_t item, const Tolerances& tolerances);

}  // namespace dartwright
