#pragma once

// Private to the library: the darts of one piece of two patterns, and the pivots about which they turn.

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// Darts by name, in the order of `before`, then those that only `after` has.
std::vector<ComparedDart> compared_darts(const PieceBothWays& both, const Tolerances& tolerances);

/// Pivots are found again where the parts beside their darts carried them, within the tolerance `notch`;
/// failing that, where any part carried them; failing that, by the name of a dart.
std::vector<ComparedPivot> compared_pivots(const PieceBothWays& both, const std::vector<ComparedPart>& parts,
                                           const Tolerances& tolerances);

}  // namespace dartwright
