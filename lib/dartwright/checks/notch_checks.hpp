#pragma once

// Private to this room.

#include "dartwright/checks/placed_finding.hpp"
#include "dartwright/checks/walked_seam.hpp"

namespace dartwright {

/// A notch nearer than this to a dart's mouth is folded away with the dart or cut where its legs are sewn.
/// Larger: notches that a cutter can still make are called faults; smaller: a nick beside the leg passes.
inline constexpr double notch_clear_of_mouth_mm = 1;

/// notch-in-dart, and notch-place for notches beyond the end of their run. Precondition: the piece is closed.
PlacedFindings notch_findings(const PieceContext& piece, const Tolerances& tolerances);

/// notch-missing, notch-place and notch-kind of a seam: the notches of its sides are paired in the order of
/// their distances from the seam's starting end; where one side has more, those are left over that make the
/// total distance of the pairs least. Precondition: the seam is measurable. O(n m) in the notches.
PlacedFindings notch_findings(const WalkedSeam& seam, const Tolerances& tolerances);

}  // namespace dartwright
