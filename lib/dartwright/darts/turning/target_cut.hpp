#pragma once

// Private to the room: the outline cut at the place where a dart is to open, and the two parts between it and
// the dart.

#include <string>

#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/darts/turning/pivot_choices.hpp"
#include "dartwright/darts/turning/turned_contents.hpp"

namespace dartwright {

struct TargetCut {
    Outline outline;         ///< as before, with a joint at the place
    std::size_t dart = 0;    ///< item of the dart
    std::size_t target = 0;  ///< item that begins at the place
    WedgePolygon polygon;
};
/// Precondition: the outline closes exactly.
TargetCut cut_at_target(const Outline& outline, const TargetChosen& target, const std::string& dart);

/// The cut from one dart through their pivot to another, where nothing need be cut. Impossible if the pivots
/// differ (`so_that` says what that hinders) or if the outline, wedges drawn to the pivots, is not a fair
/// one.
TargetCut cut_between_darts(const Outline& outline, std::size_t dart, std::size_t with,
                            const std::string& so_that);

/// Throws Impossible if the cut from the pivot leaves the piece or crosses a dart; the remedy names the
/// nearest place on that edge, in whole mm, that can be reached.
void refuse_blocked_cut(const Piece& piece, const TargetCut& cut, const TargetChosen& target);

/// The items from the dart to the place (its B side), and from the place to the dart (its A side).
struct PartsOfCut {
    Chain after_dart;
    Chain before_dart;
};
PartsOfCut parts_of(const TargetCut& cut);

/// The two parts' polygons, wedges drawn to the pivots; each begins at the pivot.
std::vector<Point> polygon_after_dart(const TargetCut& cut);
std::vector<Point> polygon_before_dart(const TargetCut& cut);

/// Whether the part after the dart is the one that stays. Impossible if nothing decides, or if `hold` names
/// an edge that is on both.
bool is_after_dart_held(const Piece& piece, const TargetCut& cut, const std::string& hold);

/// Whether the grain turns: with the edge that it runs along, else with the part that holds its middle.
bool is_grain_turning(const Piece& piece, const Chain& turning, const Chain& held, const TurningPart& part);

}  // namespace dartwright
