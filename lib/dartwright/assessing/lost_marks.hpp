#pragma once

// Where a draft lost its marks.

#include <vector>

#include "dartwright/assessing/assessment.hpp"

namespace dartwright {

/// Whether the criterion lost marks by a fault, and not only by a rung of the ladder.
bool has_lost_by_fault(const JudgedCriterion& criterion);
bool has_lost_by_fault(const Assessment& assessment);
/// The lines for which a criterion lost marks: those on its worst rung. None if it kept them all.
std::vector<const JudgedLine*> costly_lines(const JudgedCriterion& criterion);

}  // namespace dartwright
