#pragma once

// Private to this room.

#include "dartwright/checks/placed_finding.hpp"
#include "dartwright/checks/walked_seam.hpp"

namespace dartwright {

/// Allowances of two joined edges that differ by more than this are two widths. A tenth of a millimetre is
/// finer than they can be marked; larger: widths given in inches on one side and centimetres on the other
/// pass unseen; smaller: the rounding of such a width is called a fault.
inline constexpr double same_width_mm = 0.1;

/// seam-length, seam-corner and seam-allowance. Precondition: the seam is measurable. The inner corners of a
/// side of several parts are judged unless another seam of the pattern ends in that corner and so judges it.
PlacedFindings seam_findings(const WalkedSeam& seam, const std::vector<WalkedSeam>& all_seams,
                             const Tolerances& tolerances);

}  // namespace dartwright
