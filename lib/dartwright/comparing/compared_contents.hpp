#pragma once

// Private to this room: what lies in a piece or is said of it, beside its outline, in two patterns.

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// Double darts of the piece that no motion of its parts brings to where they are, or that are gone.
std::vector<Loss> losses_of_contents(const PieceBothWays& both, const ComparedPiece& compared,
                                     const Tolerances& tolerances);
/// What else is otherwise: points, legs, press and stitching of darts that stayed; press of double darts;
/// marks, grain, allowances, where a closed run begins, how the piece is cut and worn. A drawn line may end
/// at a mouth in one pattern and not in the other. O(m p + d^2) for m places of marks, p parts and d darts.
std::vector<Loss> changes_of_contents(const PieceBothWays& both, const ComparedPiece& compared,
                                      const Tolerances& tolerances);

}  // namespace dartwright
