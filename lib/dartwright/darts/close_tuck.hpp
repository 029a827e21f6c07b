#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct CloseTuckRequest {
    std::string piece;
    std::string dart;
    std::optional<double> stitched_mm;  ///< along the legs from the mouth; half of the legs unless told
};

struct CloseTuckAccount {
    std::string piece;
    std::string dart;
    double angle_rad = 0;
    double intake_mm = 0;
    double stitched_mm = 0;
    double leg_mm = 0;
    double released_mm = 0;  ///< of cloth, straight across between the ends of the stitching
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct CloseTuckResult {
    Pattern pattern;
    CloseTuckAccount account;
};

/// Makes the dart a tuck: sewn from its mouth only so far, and released beyond. The outline, every sewn
/// length and the dart's angle stay; what changes is where the stitching ends. The request is appended to
/// `made`. Throws UnknownName, BadWords (under 1 mm), Impossible (as long as the legs or longer) and what
/// movable darts do. O(n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
CloseTuckResult close_as_tuck(const Pattern& pattern, const CloseTuckRequest& request);

}  // namespace dartwright
