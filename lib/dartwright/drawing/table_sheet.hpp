#pragma once

#include "dartwright/drawing/pattern_drawing.hpp"

namespace dartwright {

/// A piece ready to be laid on the table, in its own coordinates.
struct DrawnPiece {
    DrawnGroup group;
    double base_line = 0;  ///< y of the outline's lowest point: bases lie level in a row
};

/// What the legend has to explain of how cloth is taken in.
struct TakenInKinds {
    bool is_gathered = false;
    bool is_eased = false;
    bool is_tucked = false;
};
TakenInKinds taken_in_by(const Pattern& pattern);

/// What stands on the sheet besides the pieces.
struct SheetNotes {
    std::string title;
    Unit unit = Unit::mm;
    bool has_lengths = true;
    bool is_overlay = false;
    bool is_for_cutting = false;  ///< the legend says what the lines of a cut piece mean
    bool has_darts = false;       ///< for the legend of cut pieces
    bool has_marked_lines = false;
    bool has_pressed_darts = false;
    TakenInKinds taken_in = {};
    std::string before_name;  ///< for the legend of an overlay
    std::string after_name;
    std::vector<Finding> findings;
};

/// Pieces side by side in rows, over them the title, below them a bar of 100 mm (in patterns in inches 4 in),
/// a legend and the findings, with ticks every 50 mm on the table. The sheet is as large as all that, in
/// whole mm.
Drawing sheet_of(const std::vector<DrawnPiece>& pieces, const SheetNotes& notes);

}  // namespace dartwright
