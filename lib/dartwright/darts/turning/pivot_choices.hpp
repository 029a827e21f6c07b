#pragma once

// Private to the room: the choices of a pivot that come before any turning (how much, where to, which part).

#include <string>
#include <vector>

#include "dartwright/darts/pivot.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {

/// A dart that an operation may move: refused (Impossible) unless its legs match within `legs_mm`, its point
/// lies on the bisector and its mouth is open the right way round.
DartFigures movable_dart(const Piece& piece, std::size_t item, double legs_mm);

/// The angle asked for, and whether it is all of the dart. Impossible if it is more than there is, BadWords
/// if it is none or if two ways of saying it are given.
struct AngleChosen {
    double rad = 0;
    bool is_all = true;
};
AngleChosen angle_chosen(const DartPart& part, const DartFigures& figures);

/// Where the new dart opens.
struct TargetChosen {
    std::string edge;
    double distance = 0;    ///< sewn, from the run's anticlockwise start
    bool at_start = false;  ///< at the run's own end rather than inside it
    bool at_end = false;
    Place place;
};
/// Impossible within 1 mm of a mouth or of a corner (save at the corner itself), or inside a fold edge;
/// BeyondTheRun beyond the run's end.
TargetChosen target_chosen(const Piece& piece, const std::vector<Run>& runs, const std::string& words);

/// The same where nothing turns, so that a place inside a fold edge will do.
TargetChosen target_anywhere(const Piece& piece, const std::vector<Run>& runs, const std::string& words);

/// A mouth or corner nearer than this to the place asked for is refused, mm: the strip of edge between them
/// would be too narrow to sew.
inline constexpr double nearest_to_mouth_mm = 1;

/// The edge towards which the new dart is pressed, and what is to be said of it.
struct PressChosen {
    std::string edge;
    std::string note;
};
struct PressQuestion {
    std::string wanted;   ///< asked for, or the old dart's
    std::string own_run;  ///< the run the new dart stands in; empty at a corner
    Vector axis;          ///< from the pivot to the mouth
};
PressChosen press_chosen(const Piece& piece, const std::vector<Run>& runs, const PressQuestion& question);

}  // namespace dartwright
