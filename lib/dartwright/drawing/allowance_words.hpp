#pragma once

// Private to this room: the allowances of a piece in the words of its label.

#include <string>
#include <vector>

#include "dartwright/drawing/cutting_drawing.hpp"

namespace dartwright {

/// A label is a block, not a band across the piece: no line of it is wider than so many times its size.
inline constexpr double widest_label_in_sizes = 15;

/// Widths that differ by less are written alike, mm: half of the last figure that is shown.
inline constexpr double reads_alike_mm = 0.005;

/// The allowances of a piece in lines of words: `allowance 1.5 cm all round`, `allowance: side, shoulder 1.5
/// cm; hem 4 cm; neck none`, `allowance 1.5 cm everywhere but: hem 4 cm`, `not decided, cut without: side`.
/// The edge on the fold is not among them. An edge's name and its width hang together by blanks that do not
/// part, unless they are wider than a line of the label.
std::vector<std::string> allowance_words(const CuttingPiece& piece, Unit unit);

}  // namespace dartwright
