#pragma once

// Private to the room: everything that is decided before a part turns so that a dart opens at a place.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/turning/dart_turn.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

struct TurnWanted {
    std::string dart;
    std::string to;
    AngleChosen angle;
    std::optional<double> back_off_mm;
    std::string hold;
    std::string name;
    std::string press;
    bool is_name_kept = true;  ///< a dart that is moved whole keeps its name unless another is wanted
};

struct PlannedTurn {
    std::vector<Run> runs;
    TargetChosen target;
    TargetCut cut;
    DartTurn turn;
};

/// Preconditions: the piece is prepared, and the dart's figures are those of a dart that can be moved.
/// Whether the cut stays inside is not judged. What was chosen for the user is said in `notes`.
PlannedTurn planned_turn(const Piece& piece, const TurnWanted& wanted, Notes notes);

/// Impossible if the outline, wedges drawn to the pivots, is not a fair one, or if the cut leaves the piece
/// or crosses a dart.
void judge_cut(const Piece& piece, const PlannedTurn& plan);

}  // namespace dartwright
