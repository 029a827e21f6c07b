#pragma once

// Private to the room: one turn of a part of a piece about a dart's pivot, which closes that dart by an angle
// and opens the same angle at the cut.

#include <string>
#include <vector>

#include "dartwright/darts/turning/opened_dart.hpp"
#include "dartwright/darts/turning/pivot_choices.hpp"
#include "dartwright/darts/turning/target_cut.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

struct DartTurn {
    DartItem dart;        ///< the one that closes
    DartFigures figures;  ///< of it
    AngleChosen angle;
    bool is_after_held = false;  ///< the part after the dart stays, and the one before it turns
    NewDart opened;
};

/// Of the part that turns.
Motion motion_of(const DartTurn& turn);

/// The piece with the part turned: outline, marks, grain, double darts. Overlaps are not looked for. Where
/// the cut's target is a dart, that dart opens further instead of a new one, and takes the name, press and
/// back-off given. What had to be settled is said in `notes`. Impossible if the cut crosses a double dart.
Piece turned_piece(const Piece& piece, const TargetCut& cut, const DartTurn& turn, Notes notes);

/// Impossible if parts of the outline lie over each other, wedges drawn to the pivots.
void refuse_overlap(const Outline& turned);

/// Says of each corner that the closed mouth leaves in its run. Precondition: the figures are those of a dart
/// of the outline; a mouth true about the pivot leaves none.
struct CornerWarning {
    double mouth_deg = 0;  ///< the tolerance
    std::string remedy = "draw that edge smooth";
};
void warn_of_corner(const Outline& outline, const DartFigures& closed, const CornerWarning& warning,
                    Notes notes);

/// Names of the runs in a part, in outline order.
struct RunsOfParts {
    std::vector<std::string> turned;
    std::vector<std::string> held;
};
RunsOfParts runs_of_parts(const TargetCut& cut, const DartTurn& turn);

}  // namespace dartwright
