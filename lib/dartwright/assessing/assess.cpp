#include "dartwright/assessing/assess.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <stdexcept>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/assessing/left_undivided.hpp"
#include "dartwright/assessing/overlaid_pieces.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

/// Beyond this lies no draft, whichever unit was mistaken: the largest that a file may hold is 254 m, with
/// inches for mm.
constexpr double largest_draft_mm = 1e6;

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
    ScoredLines lines = not_begun_lines(task, criterion);
    if (lines.empty()) lines = found->lines(facts, task);
    if (!lines.empty()) return lines;
    JudgedLine line;
    line.criterion = criterion;
    line.quantity = Quantity::words;
    // Where there is nothing to judge, nothing is earned.
    if (criterion != Criterion::check) {
        line.what = word_of(criterion);
        return {fault_line(std::move(line), "something to judge", nothing_to_judge)};
    }
    line.what = "what the checks find";
    line.expected_words = "no fault";
    line.found_words = "nothing further";
    line.rung = facts.lengths().front().name;
    return {{std::move(line), facts.lengths().front().share}};
}

bool is_there(const DraftFacts& facts, const std::string& piece) {
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        if (facts.plan->finished[i].piece.name == piece && !facts.draft.pieces[i]) return false;
    return true;
}

// Whether a piece that is not there is the reason: of a seam, one of either side.
bool is_missing(const DraftFacts& facts, const MarkedTask& task, const JudgedLine& line) {
    // What was to be done to a piece that is not there was not done.
    if (std::holds_alternative<OperationTask>(task.task.what)) return false;
    if (line.criterion == Criterion::size || line.quantity == Quantity::number) return false;
    for (const SeamFact& seam : facts.seams)
        if (!line.seam.empty() && seam.seam->name == line.seam && line.criterion == Criterion::seams)
            for (const SeamSide& side : seam.seam->joins)
                for (const SeamPart& part : side)
                    if (!is_there(facts, part.piece)) return true;
    return !is_there(facts, line.piece);
}

// The worst of its lines decides. A piece that is not there loses its part, and leaves the others theirs; of
// the seams, those that it was to be sewn by.
JudgedCriterion judged(const DraftFacts& facts, const MarkedTask& task, const CriterionMarks& marks) {
    JudgedCriterion out{marks.criterion, 0, marks.marks, {}, {}};
    ScoredLines lines = lines_of(facts, task, marks.criterion);
    std::set<std::string> all;
    std::set<std::string> missing;
    double worst = 1;
    double worst_there = 1;
    out.rung = lines.front().line.rung;
    for (ScoredLine& each : lines) {
        const std::string& part = marks.criterion == Criterion::seams ? each.line.seam : each.line.piece;
        all.insert(part);
        if (each.share < worst) {
            worst = each.share;
            out.rung = each.line.rung;
        }
        if (is_missing(facts, task, each.line)) {
            missing.insert(part);
            if (!is_there(facts, each.line.piece))
                each.line.remedy = "Hand in the " + each.line.piece + " as well.";
        } else
            worst_there = std::min(worst_there, each.share);
    }
    const double kept = static_cast<double>(all.size() - missing.size()) / static_cast<double>(all.size());
    out.marks = worst_there * kept * marks.marks;
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

// Criteria of the tasks that lose less without a division that the draft has not.
void keep_what_is_undivided(std::vector<JudgedTask>& tasks, const WithoutDivision& without,
                            const Pattern& draft) {
    const DraftFacts facts = facts_of(*without.exercise.plan, draft);
    if (facts.draft.whose.is_strangers) return;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (!without.tasks[i]) continue;
        const MarkedTask task = marked_task(facts, *without.tasks[i]);
        for (std::size_t k = 0; k < tasks[i].criteria.size(); ++k) {
            JudgedCriterion& criterion = tasks[i].criteria[k];
            if (!without.is_earned[task.index][k] || criterion.marks >= criterion.of) continue;
            JudgedCriterion other = judged(facts, task, task.task.marks[k]);
            if (other.marks <= criterion.marks) continue;
            tasks[i].marks += other.marks - criterion.marks;
            criterion = std::move(other);
        }
    }
}

std::vector<JudgedTask> judged_tasks(const DraftFacts& facts, const Pattern& draft) {
    const ExercisePlan& plan = *facts.plan;
    std::vector<JudgedTask> out;
    for (std::size_t i = 0; i < plan.exercise.tasks.size(); ++i)
        out.push_back(judged(facts, marked_task(facts, i)));
    if (!plan.without_divisions) return out;
    for (const WithoutDivision& each : plan.without_divisions->of(plan))
        if (is_left_undivided(plan, each, facts.draft.drawn)) keep_what_is_undivided(out, each, draft);
    return out;
}

/// A draft of which nothing is marked, and what is said of it.
struct NotMarked {
    bool is_another_pattern = false;
    std::string note;
    std::string expected;
    std::string found;
    std::string remedy;
};
const NotMarked another_pattern{
    true,
    "This is another pattern: most of its edges have other lengths and shapes than the exercise's, more "
    "than a slip makes. Nothing of it was marked.",
    "the exercise's pattern", "another pattern", "Hand in the exercise's own pattern."};
const NotMarked only_cutting_line{
    false,
    "This seems to be drawn along the exercise's cutting line, with the seam allowances outside its "
    "stitching "
    "line. Nothing of it was marked.",
    "the stitching line", "the cutting line",
    "Take the allowances off, and hand in the stitching line with its allowances beside it."};
const char* const cutting_line_note =
    "It seems to be drawn along the exercise's cutting line, with the seam allowances outside its stitching "
    "line: take them off. It was judged as it is drawn.";

// Nothing of it was found, and nothing is earned by it.
Assessment not_marked(const std::vector<Task>& tasks, const NotMarked& why) {
    Assessment out;
    out.is_another_pattern = why.is_another_pattern;
    out.notes = {why.note};
    for (const Task& task : tasks) {
        JudgedTask judged{task.name, task.words, 0, 0, {}};
        for (const CriterionMarks& marks : task.marks) {
            JudgedLine line;
            line.criterion = marks.criterion;
            line.what = "the draft";
            line.remedy = why.remedy;
            judged.criteria.push_back({marks.criterion, 0, marks.marks, fault_rung, {}});
            judged.criteria.back().lines.push_back(fault_line(std::move(line), why.expected, why.found).line);
            judged.of += marks.marks;
        }
        out.of += judged.of;
        out.tasks.push_back(std::move(judged));
    }
    return out;
}

Assessment unjudged(const Error& error, UnreadKind kind = UnreadKind::unjudged) {
    Assessment out;
    out.unread = error.what();
    out.unread_kind = kind;
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
        // As a check does, which takes no notice of edges without length.
        const Pattern sound = without_spare_items(sound_within(draft, largest_draft_mm));
        const DraftFacts facts = facts_of(*exercise.plan, sound);
        const std::vector<Task>& tasks = exercise.plan->exercise.tasks;
        const Whose& whose = facts.draft.whose;
        if (whose.is_strangers)
            return not_marked(tasks, whose.is_cutting_line ? only_cutting_line : another_pattern);
        out.tasks = judged_tasks(facts, sound);
        for (const JudgedTask& task : out.tasks) {
            out.marks += task.marks;
            out.of += task.of;
        }
        out.pieces = overlaid_pieces(facts, sound);
        out.seams = walked(facts);
        out.notes = notes_on(facts);
        if (whose.is_cutting_line) out.notes.insert(out.notes.begin(), cutting_line_note);
    } catch (const UnsoundPattern& error) {
        return unjudged(error, UnreadKind::no_pattern);
    } catch (const Error& error) {
        return unjudged(error);
    }
    return out;
}

}  // namespace dartwright
