#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct ReplayResult {
    Pattern pattern;
    std::vector<Made> steps;  ///< what was done, in order
};

/// Does the operations of a pattern's `made` list again, from its block. If the block was made by operations
/// itself, the list must begin with these (BadWords otherwise), and what follows is done. The result has the
/// list as its own. Throws BadWords (no such operation; a request with words missing, wrong, unknown) and
/// Impossible, both saying which operation. All requests are read before the first is done.
///
/// A pattern that went through a file in centimetres or inches between two operations was rounded there in
/// its last digit; `between` does the same to the pattern on its way, if it is given.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
ReplayResult replay(const Pattern& block, const std::vector<Made>& made,
                    const std::function<Pattern(const Pattern&)>& between = {});

/// Does one operation, as a `made` list has it, and adds it to the pattern's own list as the operation itself
/// writes it there. BadWords (no such operation; words missing, wrong, unknown), UnknownName, Impossible.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
Pattern performed(const Pattern& pattern, const Made& operation);

/// Writes tolerances that were given for one operation alone (by name; mm or degrees) into its request, so
/// that it can be done again.
void add_tolerances(Made& made, const std::map<std::string, double>& tolerances);

}  // namespace dartwright
