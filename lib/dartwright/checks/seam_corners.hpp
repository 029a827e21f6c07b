#pragma once

// Private to the room: the corners where a seam meets the edges that cross it.

#include "dartwright/checks/placed_finding.hpp"
#include "dartwright/checks/walked_seam.hpp"

namespace dartwright {

/// What the file and its seams say of the edges that cross a seam at two corners that come together.
enum class CornerIsJudged {
    fault,  ///< a corner that is not true is a fault
    note,   ///< it is a note: the edges lie in two seams, or one is sewn and one not
    not_at_all
};

/// `seam-corner`, at both ends and at the corners inside the sides.
///
/// Opened flat, what crosses must run on: the two angles add to 180 degrees. That is asked where both
/// crossing edges are unsewn, or are parts of one side of one seam (an armhole that a sleeve is set into).
/// Laid on each other, the two lie on each other: their angles are equal. That is asked where both are
/// unsewn, sewn to each other, or in seams of the outer and the inner piece that match: what they are sewn to
/// comes together at a corner of pieces that lie on each other too (not known where one does not close).
/// `ends` says otherwise: `free` nothing is asked, `smooth` a corner that is not true is a fault. A closed
/// run has no corner where it begins.
PlacedFindings seam_corner_findings(const WalkedSeam& seam, const std::vector<WalkedSeam>& all_seams,
                                    const Tolerances& tolerances);

Finding finding_on(const WalkedSeam& seam, const WalkedPart& part, const char* check);
PlacedFinding placed_at_end(Finding finding, const SeamCorner& where);

}  // namespace dartwright
