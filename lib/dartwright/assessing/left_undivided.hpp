#pragma once

// Private to this room: what the other tasks ask of a draft that has a piece still undivided.
//
// What a task did to a piece before, or after, another one divides it is seen on the whole piece as well. So
// a draft that has that is held against the exercise without the division too, and keeps what it earns there
// of the tasks that can be done without it. The division itself is judged by what it was to come to.

#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/assessing/matched_piece.hpp"

namespace dartwright {

/// The exercise without one task, and without those that cannot be done then.
struct WithoutDivision {
    PreparedExercise exercise;
    std::vector<std::optional<std::size_t>> tasks;  ///< of each task of the whole exercise the one of this
    /// By task of this and criterion: the work done right gets its marks, and the untouched pattern none.
    std::vector<std::vector<bool>> is_earned;
    std::vector<std::size_t> wholes;  ///< the finished pieces of this that the whole exercise has divided
};

/// One for each task that divides a piece, worked out when somebody first asks; by several threads at once,
/// too.
class WithoutDivisions {
  public:
    /// Of the plan, which is the same every time. O(d) plans and twice as many drafts judged, for d
    /// divisions.
    const std::vector<WithoutDivision>& of(const ExercisePlan& plan);

  private:
    std::once_flag once_;
    std::vector<WithoutDivision> all_;
};

/// Whether a piece of the draft is more like an undivided one than like any that is asked for, or that it was
/// before under another name.
bool is_left_undivided(const ExercisePlan& plan, const WithoutDivision& without,
                       const std::vector<DraftedPiece>& drawn);

}  // namespace dartwright
