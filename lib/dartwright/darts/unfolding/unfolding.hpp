#pragma once

// Private to the room: a half piece and its fold, and what things of the half are called in the whole.

#include <string>
#include <vector>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/run.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// The half that was drawn, and the one that unfolding adds.
enum class Half { drawn, added };

struct Unfolding {
    Piece half;  ///< its outline ends exactly where it starts
    std::vector<Run> half_runs;
    std::string fold;
    Point from;  ///< ends of the fold, in outline order
    Point to;
    MirrorLine line;
    std::string drawn_side;  ///< `left` or `right`
    std::string added_side;
    std::vector<Run> whole_runs;  ///< of the whole's outline, once that is known

    const std::string& side(Half which) const { return which == Half::drawn ? drawn_side : added_side; }
    std::string name(Half which, const std::string& old) const {
        return derived_name(side(which) + " ", old, "");
    }
};

/// Impossible if the piece has no fold, or one that cannot be unfolded at.
Unfolding unfolding_of(const Piece& piece, const Tolerances& tolerances, Notes notes);

/// Calls the halves after the wearer of a piece that lies so: left and right change places where the wearer's
/// are not those of the drawing.
void name_as_worn(Unfolding& unfolding, Worn worn, SideUp side_up);
/// Whether the wearer's left is the right of the drawing.
bool is_left_on_right(Worn worn, SideUp side_up);

/// The whole's outline: the drawn half from the fold's end round to its start, then the added half back.
/// Darts are pressed as they were; what was pressed towards the fold, or is nearer the other way round now,
/// is pressed towards the edge beyond the fold.
Outline unfolded_outline(const Unfolding& unfolding);

/// Which end of the whole's run corresponds to an end of the half's, by the name it has in the whole. Empty
/// if `from` names no end of that run.
std::string end_in_whole(const Unfolding& unfolding, Half half, const std::string& edge,
                         const std::string& from);

}  // namespace dartwright
