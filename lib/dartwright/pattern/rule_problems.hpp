#pragma once

// Private to this room: what keeps tolerances and a cutting rule from being ones.

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/problem_list.hpp"

namespace dartwright {

void look_at_tolerances(ProblemList& to, const Step& at, const Tolerances& tolerances);
/// The ones that a pattern has of its own.
void look_at_own_tolerances(ProblemList& to, const Step& at, const Pattern& pattern);
void look_at_rule(ProblemList& to, const Step& at, const CuttingRule& rule);

}  // namespace dartwright
