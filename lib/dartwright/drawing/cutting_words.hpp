#pragma once

// Private to this room: the words on a piece to be cut.

#include "dartwright/cutting/markings.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/label_places.hpp"

namespace dartwright {

/// A block with the names, the count, the allowances and what the user adds, then each dart's name, width,
/// length and where it is pressed, what is gathered or eased, names of marks, `grain` and the fold's. All lie
/// inside the stitching line, clear of what is taken, smaller where there is little room; what finds no room
/// at all stands below the piece. They are added to what is taken.
DrawnGroup cutting_words(const CuttingPiece& piece, const CuttingLabel& label, TakenPlaces& taken);

}  // namespace dartwright
