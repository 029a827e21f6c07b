#pragma once

// Private to this room: what keeps an outline from being one.

#include "dartwright/pattern/known_runs.hpp"

namespace dartwright {

/// Its runs, for the names elsewhere; the names of its darts go to `darts`. O(n) at the mean.
KnownRuns look_at_outline(ProblemList& to, const Step& at, const Outline& outline, NameTable& darts);

void look_at_dart_name(ProblemList& to, const Step& at, NameTable& darts, const std::string& dart);
/// An edge that a dart is pressed to, if one is named.
void look_for_pressed(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge);

}  // namespace dartwright
