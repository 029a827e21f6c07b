#pragma once

// Private to the room: a fold made a seam, so that a dart may open in it.

#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// The pattern with the piece cut as a mirrored pair instead of on the fold, and the fold's edge joined to
/// its mirror image by a seam of that name; said in `notes`. The seam's corners are as free as the fold's
/// were. Of two folds it is the one in which one of the `targets` (places) lies, else the first; the piece
/// stays on the other. Without a name the pattern is as it was. Impossible if the piece has no fold; BadWords
/// if there is such a seam.
struct CentreSeam {
    std::string piece;
    std::string name;
    std::vector<std::string> targets;
};
Pattern with_centre_seam(Pattern pattern, const CentreSeam& seam, Notes notes);

}  // namespace dartwright
