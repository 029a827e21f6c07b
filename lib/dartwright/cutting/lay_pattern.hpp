#pragma once

#include <string>
#include <vector>

#include "dartwright/cutting/lay.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct PatternLay {
    LayRequest request;
    Lay lay;
    std::vector<std::string> notes;  ///< the lay's own among them
};

/// The pattern's cutting pieces, by its own allowances, on cloth. Edges without one are laid without, and
/// named in a note. On opened cloth there is no fold to lay a piece on, so a piece on the fold is opened
/// first. Throws what lay, cutting_line and open throw.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
PatternLay lay_pattern(const Pattern& pattern, const LayRequest& request);

}  // namespace dartwright
