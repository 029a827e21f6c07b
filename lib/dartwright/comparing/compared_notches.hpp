#pragma once

// Private to the library: the notches of one piece of two patterns.

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// Those of each run that both have, paired in the order of their distances; then those that only one has.
std::vector<ComparedNotch> compared_notches(const PieceBothWays& both);

}  // namespace dartwright
