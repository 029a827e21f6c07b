#pragma once

#include <string>

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// Where a person presses a dart to: the edge that `press` names; in an opened piece, where that edge begins
/// beyond the former fold, the line that is marked there (`centre front`), or `the centre line` if none is.
/// Empty if `press` is. Precondition: the item is a dart (std::invalid_argument). O(items + marks).
std::string press_name(const Piece& piece, std::size_t item);
/// The same of a double dart, whose half is told by its name.
std::string press_name(const Piece& piece, const DoubleDart& dart);

}  // namespace dartwright
