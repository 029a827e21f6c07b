#pragma once

#include <memory>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

struct ExercisePlan;

/// An exercise made ready to judge any number of drafts by: the finished pattern, and what it was judged to
/// be. Judging does not change it, so that several threads may use one.
struct PreparedExercise {
    Exercise exercise;
    Pattern finished;
    std::shared_ptr<const ExercisePlan> plan;  ///< what is asked of every draft, for `assess`
};
/// BadWords, UnknownName and Impossible name the task.
PreparedExercise prepared(Exercise exercise);

/// Judges a draft, wherever it lies, turned or turned over, listed either way round, in any unit, with any
/// names that its shape allows to match. Never throws for what is drawn: a draft that cannot be judged says
/// why in `unread`, one with problems (problems_of, but within 1 km, since a mistaken unit is judged) too.
/// std::bad_alloc, and whatever a mistake of the library's throws, go on to the caller: they say nothing of
/// the draft. `student` and `file` are left empty. O((n + p) log n) for n curves and p places looked at.
Assessment assess(const PreparedExercise& exercise, const Pattern& draft);

}  // namespace dartwright
