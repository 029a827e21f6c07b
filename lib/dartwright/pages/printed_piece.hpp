#pragma once

#include <string>

#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/pages/print_sheet.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A piece of the pattern with its cutting line, stitching line, darts, notches, grain, fold, marks and
/// the words of its label; no fills, which would cost ink. A piece without a grain stands as it was drawn.
/// Throws what `cutting_line` does.
/// Requires a sound piece and pattern (problems_of is empty): UnsoundPattern.
PrintedPiece printed_piece(const Piece& piece, const Pattern& pattern, const CuttingLabel& label);

}  // namespace dartwright
