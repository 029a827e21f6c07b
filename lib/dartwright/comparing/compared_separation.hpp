#pragma once

// Private to the library: a piece of one pattern that lies in two or three pieces of the other.

#include <optional>

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// The piece against those of `after` that have all its edges together, in the lengths that they had as
/// nearly as may be, and within a twentieth of them all. Candidates are the piece of its name and those that
/// `before` does not have. Empty if the piece of its name has every edge at its length, or if no two or three
/// candidates have every edge.
///
/// `same` is the piece of `after` that has its name, or null; `strangers` are the pieces of `after` that
/// `before` does not have.
std::optional<ComparedPiece> compared_separation(const ShapedPiece& piece, const ShapedPiece* same,
                                                 const std::vector<ShapedPiece>& strangers,
                                                 const Tolerances& tolerances);

}  // namespace dartwright
