#pragma once

// Private to this room: what keeps a seam from being one.

#include "dartwright/pattern/known_runs.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// `runs` are those of the pieces, in the order of their names in `pieces`.
void look_at_seam(ProblemList& to, const Step& at, const Seam& seam, const NameTable& pieces,
                  const std::vector<KnownRuns>& runs);

}  // namespace dartwright
