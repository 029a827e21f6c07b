#pragma once

// Private to the room: what is measured along a run that became longer or shorter at one end.

#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

struct RunGrown {
    std::size_t piece = 0;
    std::string edge;
    RunEnd at = RunEnd::end;  ///< where it changed
    double by_mm = 0;         ///< sewn; negative where it became shorter
};
/// The pattern, whose run has changed already, with its notches and its stretches of allowance measured anew.
/// A notch keeps its distance from the end from which the first seam with that run is walked, so that pairs
/// that matched still match; in no seam it keeps its place on the cloth. Stretches keep theirs. A notch that
/// the change took the place of is left and said in `notes`.
Pattern with_notches_kept(Pattern pattern, const RunGrown& grown, Notes notes);

}  // namespace dartwright
