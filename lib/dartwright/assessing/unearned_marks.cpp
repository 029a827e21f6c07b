#include "dartwright/assessing/unearned_marks.hpp"

#include <algorithm>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/darts/impossible.hpp"
#include "dartwright/darts/phrases.hpp"
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
