#pragma once

#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

class Notes;  // private to the library

/// A run's sewn length before and after an operation; 0 where the run does not exist.
struct RunChange {
    std::string edge;
    double before_mm = 0;
    double after_mm = 0;
};

/// Every run of `before` in its order, then those that only `after` has.
std::vector<RunChange> run_changes(const std::vector<Run>& before, const std::vector<Run>& after);

/// Says of each run whose length changed by what an eye could see (0.01 mm) in which seams of the pattern it
/// is.
void note_seams_of_changed_runs(const Pattern& pattern, const std::string& piece,
                                const std::vector<RunChange>& runs, Notes notes);

/// A seam's difference (second side less first, less the ease) before and after an operation, mm.
struct SeamChange {
    std::string seam;
    double before_mm = 0;
    double after_mm = 0;
};

/// Every seam whose difference an operation changed by more than rounding, in the pattern's order.
/// Precondition: the same seams in both.
std::vector<SeamChange> seam_changes(const Pattern& before, const Pattern& after);

}  // namespace dartwright
