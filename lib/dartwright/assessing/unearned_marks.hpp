#pragma once

// Marks of an exercise that nobody would have to earn.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/assess.hpp"

namespace dartwright {

/// Marks that are given for nothing, or that nobody can get.
struct UnearnedMarks {
    std::size_t task = 0;
    std::optional<Criterion> criterion;  ///< none: all of the task
    std::string why;                     ///< in a few words
    std::string way_out;                 ///< what to write instead
};
/// Of what is to be done or kept: criteria of which the finished pattern leaves nothing to judge, those that
/// the finished pattern itself does not get, and those that the pattern gets as it was handed out; tasks that
/// change nothing by more than the first rungs of the ladder, such as truing what is true; and tasks that
/// could be left out without losing a mark. An exercise without any of these gives the untouched pattern
/// nothing for what was to be done. O(t) assessments for t tasks.
std::vector<UnearnedMarks> unearned_marks(const PreparedExercise& exercise);

}  // namespace dartwright
