#include "dartwright/assessing/unearned_marks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/comparing/rigid_parts.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

/// Marks are sums of shares: less than this is rounding.
constexpr double rounding_marks = 1e-9;

bool is_to_be_done(const Task& task) {
    return std::holds_alternative<OperationTask>(task.what);
}
bool is_to_be_kept(const Task& task) {
    return std::holds_alternative<KeepTask>(task.what);
}

// Rungs are compared in mm and degrees of the exercise's first ones.
class FirstRungs {
  public:
    explicit FirstRungs(const Ladders& ladders)
        : length_(ladders.lengths.front().within), angle_deg_(ladders.angles.front().within) {}

    bool is_hardly_changed(const StandingDart& before, const StandingDart& after) const {
        const DartFigures& a = before.figures;
        const DartFigures& b = after.figures;
        return before.edge == after.edge && is_short(before.distance_mm - after.distance_mm) &&
               is_short(a.leg_a - b.leg_a) && is_short(a.leg_b - b.leg_b) && is_short(a.intake - b.intake) &&
               is_short(a.back_off - b.back_off) && is_narrow(degrees(a.angle_rad - b.angle_rad)) &&
               is_narrow(before.kink_deg - after.kink_deg);
    }
    // The same darts, and every part where it was.
    bool is_hardly_changed(const ShapedPiece& before, const ShapedPiece& after) const {
        if (edges_of(before) != edges_of(after)) return false;
        const std::vector<StandingDart> darts = standing_darts(before, edges_of(before));
        const std::vector<StandingDart> later = standing_darts(after, edges_of(before));
        if (darts.size() != later.size()) return false;
        for (std::size_t i = 0; i < darts.size(); ++i)
            if (!is_hardly_changed(darts[i], later[i])) return false;
        const RigidParts parts = rigid_parts({before, after});
        return std::all_of(parts.parts.begin(), parts.parts.end(),
                           [this](const ComparedPart& part) { return is_short(part.strays_mm); });
    }

  private:
    bool is_short(double mm) const { return std::abs(mm) <= length_; }
    bool is_narrow(double deg) const { return std::abs(deg) <= angle_deg_; }
    double length_;
    double angle_deg_;
};

bool is_hardly_changed(const Pattern& before, const Pattern& after, const Exercise& exercise) {
    if (before.pieces.size() != after.pieces.size()) return false;
    const FirstRungs rungs(exercise.ladders);
    const Tolerances tolerances = tolerances_of(exercise.pattern);
    for (std::size_t i = 0; i < before.pieces.size(); ++i) {
        const Piece& piece = before.pieces[i];
        if (piece.outline == after.pieces[i].outline) continue;
        if (!rungs.is_hardly_changed(shaped_piece(piece, tolerances, "before"),
                                     shaped_piece(after.pieces[i], tolerances, "after")))
            return false;
    }
    return true;
}

class Unearned {
  public:
    explicit Unearned(const PreparedExercise& exercise)
        : exercise_(exercise),
          tasks_(exercise.plan->exercise.tasks),
          finished_(assess(exercise, exercise.finished)),
          untouched_(assess(exercise, exercise.plan->exercise.pattern)) {}

    std::vector<UnearnedMarks> all() {
        for (std::size_t i = 0; i < tasks_.size(); ++i)
            for (std::size_t k = 0; k < tasks_[i].marks.size(); ++k) look_at(i, k);
        if (!out_.empty()) return out_;
        look_for_hardly_done();
        if (!out_.empty()) return out_;
        for (std::size_t i = 0; i < tasks_.size(); ++i)
            if (is_to_be_done(tasks_[i])) leave_out(i);
        return out_;
    }

  private:
    void add(std::size_t task, Criterion criterion, std::string why) {
        const std::string word = quoted(word_of(criterion));
        const std::string steps = is_to_be_done(tasks_[task])
                                      ? ", or the steps as exercises of their own, one after the other"
                                      : "";
        out_.push_back({task, criterion, word + ", " + std::move(why), "marks without " + word + steps});
    }

    void look_at(std::size_t task, std::size_t criterion) {
        const bool is_looked_at = is_to_be_done(tasks_[task]) || is_to_be_kept(tasks_[task]);
        if (!is_looked_at || !finished_.unread.empty() || !untouched_.unread.empty()) return;
        const JudgedCriterion& finished = finished_.tasks[task].criteria[criterion];
        const JudgedCriterion& untouched = untouched_.tasks[task].criteria[criterion];
        const Criterion which = finished.criterion;
        if (finished.lines.front().found_words == nothing_to_judge) {
            const bool is_later = is_to_be_done(tasks_[task]) && has_later(task);
            return add(task, which,
                       is_later ? "of which the later tasks leave nothing to judge"
                                : "for which there is nothing to judge");
        }
        if (!is_to_be_done(tasks_[task])) return;
        if (finished.marks < finished.of - rounding_marks)
            return add(task, which, "which the work done right does not get: nothing of it can be seen");
        if (untouched.marks > rounding_marks) add(task, which, "which the pattern gets as it is handed out");
    }

    bool has_later(std::size_t task) const {
        return std::any_of(tasks_.begin() + static_cast<std::ptrdiff_t>(task) + 1, tasks_.end(),
                           is_to_be_done);
    }

    // What was done already, or by so little that no hand could be told from one that did nothing.
    void look_for_hardly_done() {
        Pattern pattern = exercise_.plan->exercise.pattern;
        for (std::size_t i = 0; i < tasks_.size(); ++i) {
            if (!is_to_be_done(tasks_[i])) continue;
            Pattern after = done(pattern, std::get<OperationTask>(tasks_[i].what).operation);
            if (is_hardly_changed(pattern, after, exercise_.plan->exercise))
                out_.push_back({i, std::nullopt,
                                "what is as it was before to within the first rungs of the ladder",
                                "an operation that changes more, or a pattern that is not so to begin with"});
            pattern = std::move(after);
        }
    }

    // Where the other tasks can be done without it.
    void leave_out(std::size_t task) {
        Exercise others = exercise_.plan->exercise;
        others.tasks.erase(others.tasks.begin() + static_cast<std::ptrdiff_t>(task));
        if (std::none_of(others.tasks.begin(), others.tasks.end(), is_to_be_done)) return;
        try {
            const Assessment without = assess(exercise_, finished_pattern(others));
            if (!without.unread.empty()) return;
            const JudgedTask& judged = without.tasks[task];
            if (judged.marks < judged.of - rounding_marks) return;
        } catch (const Impossible&) {
            return;
        } catch (const BadWords&) {
            return;
        }
        out_.push_back(
            {task, std::nullopt, "what loses no mark where it is left out and the others are done",
             "criteria that show it, or the steps as exercises of their own, one after the other"});
    }

    const PreparedExercise& exercise_;
    const std::vector<Task>& tasks_;
    Assessment finished_;
    Assessment untouched_;
    std::vector<UnearnedMarks> out_;
};

}  // namespace

std::vector<UnearnedMarks> unearned_marks(const PreparedExercise& exercise) {
    return Unearned(exercise).all();
}

}  // namespace dartwright
