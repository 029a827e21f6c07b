#pragma once

#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct MergeRequest {
    std::string piece;
    std::string dart;  ///< closes
    std::string with;  ///< opens by the angle of the other
    std::string hold;  ///< an edge that stays; empty: chosen by fold, then grain
    std::string name;  ///< of the dart that is left; empty: that of `with`
};

struct MergeAccount {
    std::string piece;
    std::string dart;
    std::string with;
    std::string name;           ///< of the dart that is left
    double angle_rad = 0;       ///< of the dart that closed
    double angle_with_rad = 0;  ///< of the other, before
    double old_intake_mm = 0;   ///< of the other, before
    double new_intake_mm = 0;
    std::vector<std::string> turned;
    std::vector<std::string> held;
    double turn_rad = 0;  ///< signed, anticlockwise positive
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct MergeResult {
    Pattern pattern;
    MergeAccount account;
};

/// Closes a dart into another that aims at the same pivot, which opens by its angle and keeps its name, press
/// and back-off. Two turns about different points compose to a turn about a third, so darts whose pivots are
/// over 0.1 mm apart are refused, with that distance. The request is appended to `made`. Throws Impossible
/// (geometry), UnknownName, BadWords. O(n log n) in the flattened outline's vertices.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
MergeResult merge(const Pattern& pattern, const MergeRequest& request);

}  // namespace dartwright
