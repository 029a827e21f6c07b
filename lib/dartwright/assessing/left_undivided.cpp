#include "dartwright/assessing/left_undivided.hpp"

#include <algorithm>

#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

/// Marks are sums of shares: less than this is rounding.
constexpr double rounding_of_marks = 1e-9;

// Empty if it cannot be done.
std::optional<Pattern> done_if_possible(const Pattern& pattern, const Task& task) {
    const auto* operation = std::get_if<OperationTask>(&task.what);
    if (!operation) return pattern;
    try {
        return done(pattern, operation->operation);
    } catch (const Impossible&) {
    } catch (const BadWords&) {
    } catch (const UnknownName&) {
    }
    return std::nullopt;
}

bool is_operation(const Task& task) {
    return std::holds_alternative<OperationTask>(task.what);
}

// What an exercise of its own would be refused for is not counted here.
std::vector<std::vector<bool>> earned_criteria(const PreparedExercise& exercise) {
    const Assessment finished = assess(exercise, exercise.finished);
    const Assessment untouched = assess(exercise, exercise.exercise.pattern);
    std::vector<std::vector<bool>> out;
    for (std::size_t i = 0; i < exercise.exercise.tasks.size(); ++i) {
        const Task& task = exercise.exercise.tasks[i];
        out.emplace_back(task.marks.size(), false);
        if (!is_operation(task) || !finished.unread.empty() || !untouched.unread.empty()) continue;
        for (std::size_t k = 0; k < task.marks.size(); ++k) {
            const JudgedCriterion& right = finished.tasks[i].criteria[k];
            out[i][k] = right.marks >= right.of - rounding_of_marks &&
                        untouched.tasks[i].criteria[k].marks <= rounding_of_marks;
        }
    }
    return out;
}

std::vector<std::size_t> pieces_beside(const ExercisePlan& plan, const ExercisePlan& without) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < without.finished.size(); ++i) {
        const ShapedPiece& whole = without.finished[i];
        const bool is_asked =
            std::any_of(plan.finished.begin(), plan.finished.end(), [&](const ShapedPiece& each) {
                return each.piece.name == whole.piece.name && edges_of(each) == edges_of(whole);
            });
        if (!is_asked) out.push_back(i);
    }
    return out;
}

// No other division is left out besides, which would make a plan for every order of all of them.
PreparedExercise prepared_as_it_is(Exercise exercise) {
    ExercisePlan plan = plan_of(exercise);
    plan.without_divisions.reset();
    Pattern finished = plan.finished_pattern;
    return {std::move(exercise), std::move(finished), std::make_shared<const ExercisePlan>(std::move(plan))};
}

WithoutDivision without_division(const ExercisePlan& plan, std::size_t division) {
    WithoutDivision out;
    Exercise exercise = plan.exercise;
    exercise.tasks.clear();
    Pattern pattern = exercise.pattern;
    for (std::size_t i = 0; i < plan.exercise.tasks.size(); ++i) {
        const Task& task = plan.exercise.tasks[i];
        out.tasks.emplace_back();
        auto after = i == division ? std::nullopt : done_if_possible(pattern, task);
        if (!after) continue;
        pattern = std::move(*after);
        out.tasks.back() = exercise.tasks.size();
        exercise.tasks.push_back(task);
    }
    out.exercise = prepared_as_it_is(std::move(exercise));
    out.is_earned = earned_criteria(out.exercise);
    out.wholes = pieces_beside(plan, *out.exercise.plan);
    return out;
}

double misfit_as(const std::vector<RunSignature>& known, const DraftedPiece& drawn) {
    const RunMatching way = matched_runs(known, drawn.runs).front();
    return way.misfit + way.surplus;
}

}  // namespace

const std::vector<WithoutDivision>& WithoutDivisions::of(const ExercisePlan& plan) {
    std::call_once(once_, [&] {
        for (const std::size_t division : plan.divisions) {
            try {
                all_.push_back(without_division(plan, division));
            } catch (const Error&) {
                // Without it the exercise is none.
            }
        }
    });
    return all_;
}

bool is_left_undivided(const ExercisePlan& plan, const WithoutDivision& without,
                       const std::vector<DraftedPiece>& drawn) {
    const ExercisePlan& other = *without.exercise.plan;
    const auto is_whole = [&](const DraftedPiece& piece, std::size_t whole) {
        const double misfit = misfit_as(other.signatures[whole], piece);
        if (!(misfit < worst_misfit)) return false;
        const bool is_asked = std::any_of(plan.signatures.begin(), plan.signatures.end(),
                                          [&](const auto& each) { return misfit_as(each, piece) <= misfit; });
        const std::string& name = other.finished[whole].piece.name;
        return !is_asked && std::none_of(plan.known.begin(), plan.known.end(), [&](const ShapedPiece& each) {
            return each.piece.name != name && misfit_as(signatures_of(each), piece) < misfit;
        });
    };
    return std::any_of(drawn.begin(), drawn.end(), [&](const DraftedPiece& piece) {
        return std::any_of(without.wholes.begin(), without.wholes.end(),
                           [&](std::size_t whole) { return is_whole(piece, whole); });
    });
}

}  // namespace dartwright
