#pragma once

// Private to the library: what an operation of an exercise did to the darts, so that a draft can be asked for
// it.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

/// The pattern after one more operation. Impossible, BadWords.
Pattern done(const Pattern& pattern, const Made& operation);

/// A dart that the operation moved, opened, or changed where it stands.
struct TouchedDart {
    std::string piece;
    std::string dart;
    bool is_placed = false;  ///< it was moved or opened, so that its place is asked for
};
/// A mouth that the operation closed.
struct ClosedDart {
    std::string piece;
    std::string dart;
    std::string edge;
    double distance_mm = 0;  ///< sewn, from the run's anticlockwise start
    double angle_rad = 0;
    /// From the other end of the run, which a later task may make longer or shorter.
    std::optional<double> to_end_mm = {};
};
struct OperationDeeds {
    std::vector<TouchedDart> touched;
    std::vector<ClosedDart> closed;
    std::vector<std::string> pieces;  ///< of the pattern after, those that the pattern before has not so
};
struct PatternStep {
    const Pattern& before;
    const Pattern& after;
};
/// Impossible if an outline does not close. O(n log n).
OperationDeeds deeds_of(const Made& operation, const PatternStep& step);

/// What such an operation can be judged by: `gone` only if it closed something, and of the others only what
/// it touched a dart for; always `shape`.
std::vector<Criterion> criteria_of(const OperationDeeds& deeds);

}  // namespace dartwright
