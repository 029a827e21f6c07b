#pragma once

#include <string>

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The edge towards which a dart is pressed where nothing says otherwise: an upright one towards the fold (of
/// two, that which runs nearer to the dart's own direction), or the edge along which the grain runs; a level
/// one down to the waist. `axis` is the dart's, upright when it lies nearer to the grain than square to it.
/// Empty if the piece has no such edge.
std::string usual_press(const Piece& piece, Vector axis);

}  // namespace dartwright
