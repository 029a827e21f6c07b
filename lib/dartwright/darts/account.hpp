#pragma once

#include <string>
#include <vector>

#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// A run's sewn length before and after an operation; 0 where the run does not exist.
struct RunChange {
    std::string edge;
    double before_mm = 0;
    double after_mm = 0;
};

/// Every run of `before` in its order, then those that only `after` has.
std::vector<RunChange> run_changes(const std::vector<Run>& before, const std::vector<Run>& after);

}  // namespace dartwright
