#include "dartwright/assessing/class_summary.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/lost_marks.hpp"

namespace dartwright {
namespace {

std::vector<std::optional<double>> task_marks_of(const Assessment& assessment,
                                                 const std::vector<TaskSummary>& tasks) {
    std::vector<std::optional<double>> marks;
    for (const TaskSummary& task : tasks) {
        const auto found = std::find_if(assessment.tasks.begin(), assessment.tasks.end(),
                                        [&](const JudgedTask& judged) { return judged.name == task.name; });
        marks.push_back(found == assessment.tasks.end() ? std::nullopt : std::optional<double>(found->marks));
    }
    return marks;
}

}  // namespace

// Every figure of it is one student's; a class is told what to look to.
const char* remedy_in_general(Criterion criterion) {
    switch (criterion) {
        case Criterion::place:
            return "Measure the place along the stitching line from the end that is named, darts closed.";
        case Criterion::angle:
            return "Open the new dart by as much as the old one closes, measured at the pivot.";
        case Criterion::legs:
            return "Fold each dart and walk one leg along the other before cutting out.";
        case Criterion::mouth:
            return "Fold the dart as it will be pressed, and draw the edge smooth across it.";
        case Criterion::pivot:
            return "Cut to the pivot, turn about it, and draw the dart to aim at it, short of it by its "
                   "back-off.";
        case Criterion::gone:
            return "Close the old dart wholly; what one opens the other gives up.";
        case Criterion::shape:
            return "Trace every part from the pattern again, and nothing but the parts that move moves.";
        case Criterion::lengths:
            return "Measure every seam line again after the work: moving a dart keeps its length.";
        case Criterion::angles:
            return "Add up the darts about each pivot before and after: together they stay.";
        case Criterion::area:
            return "Lay the pattern under the draft, part by part: no cloth is added or cut away.";
        case Criterion::notches:
            return "Carry the notches over, measured along the stitching line with darts closed.";
        case Criterion::seams:
            return "Walk each seam, one side along the other, and true both.";
        case Criterion::check:
            return "Check the pattern before it is handed in: corners, kinks, grain, names.";
        case Criterion::allowances:
            return "Draw the allowances anew after the work, each as the rule gives it.";
        case Criterion::measure:
            return "Measure the wearer and the pattern again, all round, and compare the ease.";
        case Criterion::size:
            return "Say the unit that is drawn in, and print at full scale: measure the test square first.";
    }
    return "";
}

MeasureSummary* ClassSummary::measure_of(const JudgedTask& task, const JudgedLine& line) {
    const auto key = std::tuple(task.name, line.criterion, line.piece, line.what);
    const auto found = index_.find(key);
    if (found != index_.end()) return &measures[found->second];
    if (measures.size() == most_measures) return nullptr;
    index_.emplace(key, measures.size());
    MeasureSummary& measure = measures.emplace_back();
    measure.task = task.name;
    measure.criterion = line.criterion;
    measure.piece = line.piece;
    measure.what = line.what;
    measure.quantity = line.quantity;
    measure.expected = line.expected;
    measure.remedy = remedy_in_general(line.criterion);
    return &measure;
}

void ClassSummary::add(const Assessment& assessment) {
    const bool is_first_judged = tasks.empty() && assessment.unread.empty();
    if (is_first_judged)
        for (const JudgedTask& task : assessment.tasks) tasks.push_back({task.name, task.of});
    students.push_back({assessment.student, assessment.file, assessment.unread, assessment.marks,
                        assessment.of, task_marks_of(assessment, tasks), has_lost_by_fault(assessment)});
    for (const JudgedTask& task : assessment.tasks) {
        for (const JudgedCriterion& criterion : task.criteria) {
            for (const JudgedLine& line : criterion.lines) {
                MeasureSummary* measure = measure_of(task, line);
                if (!measure) continue;
                if (measure->expected != line.expected) measure->expected.reset();
                const bool is_same_kind = measure->quantity == line.quantity;
                if (line.difference && is_same_kind && std::isfinite(*line.difference))
                    measure->differences.push_back(static_cast<float>(*line.difference));
            }
            for (const JudgedLine* line : costly_lines(criterion)) {
                MeasureSummary* measure = measure_of(task, *line);
                if (!measure) continue;
                ++(line->rung == fault_rung ? measure->with_fault : measure->on_a_rung);
            }
        }
    }
}

namespace {

/// The last parts of a path, so many of them, without the file's ending: `evening/gul`.
std::string end_of_path(const std::string& file, std::size_t parts) {
    std::size_t start = file.size();
    for (; parts > 0 && start != std::string::npos && start > 0; --parts) {
        const std::size_t slash = file.rfind('/', start - 1);
        start = slash == std::string::npos ? 0 : slash;
    }
    std::string end = file.substr(start > 0 ? start + 1 : 0);
    const std::size_t dot = end.rfind('.');
    const std::size_t slash = end.rfind('/');
    const bool has_ending =
        dot != std::string::npos && dot > 0 && (slash == std::string::npos || dot > slash + 1);
    return has_ending ? end.substr(0, dot) : end;
}

std::map<std::string, std::size_t> counts_of(const std::vector<std::string>& labels) {
    std::map<std::string, std::size_t> counts;
    for (const std::string& label : labels) ++counts[label];
    return counts;
}

}  // namespace

std::vector<std::string> labels_of(const std::vector<StudentSummary>& students) {
    std::vector<std::string> labels;
    std::size_t longest = 0;
    for (const StudentSummary& student : students) {
        labels.push_back(student.student.empty() ? end_of_path(student.file, 1) : student.student);
        const auto slashes = std::count(student.file.begin(), student.file.end(), '/');
        longest = std::max(longest, static_cast<std::size_t>(slashes) + 1);
    }
    for (std::size_t parts = 2; parts <= longest; ++parts) {
        const auto counts = counts_of(labels);
        for (std::size_t i = 0; i < labels.size(); ++i)
            if (counts.at(labels[i]) > 1) labels[i] = end_of_path(students[i].file, parts);
    }
    // One path may be two drafts, marked on two machines.
    const auto counts = counts_of(labels);
    std::map<std::string, std::size_t> seen;
    for (std::string& label : labels) {
        if (counts.at(label) == 1) continue;
        const std::size_t number = ++seen[label];
        if (number > 1) label += " (" + std::to_string(number) + ")";
    }
    return labels;
}

ClassCount count_of(const std::vector<StudentSummary>& students) {
    ClassCount count;
    count.all = students.size();
    for (const StudentSummary& student : students) {
        const bool is_unread = !student.unread.empty();
        if (is_unread) ++count.unread;
        if (!is_unread && student.marks >= student.of) ++count.with_all_marks;
        if (student.has_fault) ++count.with_faults;
    }
    return count;
}

std::vector<const MeasureSummary*> commonest_faults(const ClassSummary& summary) {
    std::vector<const MeasureSummary*> faults;
    for (const MeasureSummary& measure : summary.measures)
        if (measure.with_fault + measure.on_a_rung > 0) faults.push_back(&measure);
    std::stable_sort(faults.begin(), faults.end(), [](const MeasureSummary* a, const MeasureSummary* b) {
        if (a->with_fault != b->with_fault) return a->with_fault > b->with_fault;
        return a->on_a_rung > b->on_a_rung;
    });
    return faults;
}

Spread spread_of(std::vector<float> differences) {
    if (differences.empty()) throw std::invalid_argument("there is no spread of no measures");
    std::sort(differences.begin(), differences.end());
    const std::size_t half = differences.size() / 2;
    const bool is_odd = differences.size() % 2 == 1;
    const double median =
        is_odd ? differences[half] : 0.5 * (double{differences[half - 1]} + double{differences[half]});
    return {differences.front(), median, differences.back()};
}

}  // namespace dartwright
