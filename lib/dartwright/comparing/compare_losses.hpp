#pragma once

// Private to this room: what of a comparison is a loss, in the trade's words and the unit given.

#include "dartwright/comparing/compare.hpp"

namespace dartwright {

std::vector<Loss> losses_of(const ComparedPiece& piece, const Tolerances& tolerances, Unit unit);
std::vector<Loss> losses_of(const ComparedSeam& seam, const Tolerances& tolerances, Unit unit);
Loss loss_of_piece(const std::string& piece);

}  // namespace dartwright
