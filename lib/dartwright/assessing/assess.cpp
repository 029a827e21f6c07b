#include "dartwright/assessing/assess.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/assessing/overlaid_pieces.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

using LinesOf = ScoredLines (*)(const DraftFacts&, const MarkedTask&);
struct JudgedBy {
    Criterion criterion;
    LinesOf lines;
};
constexpr std::array<JudgedBy, 16> judged_by{{{Criterion::place, place_lines},
                                              {Criterion::angle, angle_lines},
                                              {Criterion::legs, legs_lines},
                                              {Criterion::mouth, mouth_lines},
                                              {Criterion::pivot, pivot_lines},
                                              {Criterion::gone, gone_lines},
                                              {Criterion::shape, shape_lines},
                                              {Criterion::lengths, lengths_lines},
                                              {Criterion::angles, angles_lines},
                                              {Criterion::area, area_lines},
                                              {Criterion::notches, notches_lines},
                                              {Criterion::seams, seams_lines},
                                              {Criterion::check, check_lines},
                                              {Criterion::allowances, allowances_lines},
                                              {Criterion::measure, measure_lines},
                                              {Criterion::size, size_lines}}};

ScoredLines lines_of(const DraftFacts& facts, const MarkedTask& task, Criterion criterion) {
    const auto found = std::find_if(judged_by.begin(), judged_by.end(),
                                    [&](const JudgedBy& each) { return each.criterion == criterion; });
    ScoredLines lines = found->lines(facts, task);
    if (!lines.empty()) return lines;
    JudgedLine line;
    line.criterion = criterion;
    line.quantity = Quantity::words;
    line.what = criterion == Criterion::check ? "what the checks find" : word_of(criterion);
    line.expected_words = criterion == Criterion::check ? "no fault" : "nothing";
    line.found_words = criterion == Criterion::check ? "none that is not judged already" : "nothing to judge";
    line.rung = facts.lengths().front().name;
    return {{std::move(line), facts.lengths().front().share}};
}

// The worst of its lines decides.
JudgedCriterion judged(const DraftFacts& facts, const MarkedTask& task, const CriterionMarks& marks) {
    JudgedCriterion out{marks.criterion, 0, marks.marks, {}, {}};
    ScoredLines lines = lines_of(facts, task, marks.criterion);
    const auto worst =
        std::min_element(lines.begin(), lines.end(),
                         [](const ScoredLine& a, const ScoredLine& b) { return a.share < b.share; });
    out.marks = worst->share * marks.marks;
    out.rung = worst->line.rung;
    for (ScoredLine& line : lines) out.lines.push_back(std::move(line.line));
    return out;
}

JudgedTask judged(const DraftFacts& facts, const MarkedTask& task) {
    JudgedTask out{task.task.name, task.task.words, 0, 0, {}};
    for (const CriterionMarks& marks : task.task.marks) {
        out.criteria.push_back(judged(facts, task, marks));
        out.marks += out.criteria.back().marks;
        out.of += marks.marks;
    }
    return out;
}

std::vector<WalkedLengths> walked(const DraftFacts& facts) {
    std::vector<WalkedLengths> out;
    for (const SeamFact& seam : facts.seams) {
        if (!seam.is_there) continue;
        out.push_back({seam.seam->name, seam.lengths_mm[0], seam.lengths_mm[1], seam.ease_mm,
                       seam.difference_mm, std::abs(seam.difference_mm) <= facts.plan->tolerances.seam_mm});
    }
    return out;
}

}  // namespace

PreparedExercise prepared(Exercise exercise) {
    auto plan = std::make_shared<const ExercisePlan>(plan_of(exercise));
    return {std::move(exercise), plan->finished_pattern, plan};
}

Assessment assess(const PreparedExercise& exercise, const Pattern& draft) {
    Assessment out;
    try {
        // Asks nothing yet: a draft in the wrong unit, which is judged, lies beyond what a file may hold.
        const SoundEntry sound;
        const DraftFacts facts = facts_of(*exercise.plan, draft);
        const std::vector<Task>& tasks = exercise.plan->exercise.tasks;
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            out.tasks.push_back(judged(facts, {i, tasks[i]}));
            out.marks += out.tasks.back().marks;
            out.of += out.tasks.back().of;
        }
        out.pieces = overlaid_pieces(facts, draft);
        out.seams = walked(facts);
        out.notes = notes_on(facts);
    } catch (const std::exception& error) {
        out = {};
        out.unread = error.what();
    }
    return out;
}

}  // namespace dartwright
