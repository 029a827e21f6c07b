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
                if (measure->remedy.empty()) measure->remedy = line->remedy;
            }
        }
    }
}

std::vector<std::string> labels_of(const std::vector<StudentSummary>& students) {
    std::map<std::string, std::size_t> counts;
    for (const StudentSummary& student : students) ++counts[student.student];
    std::vector<std::string> labels;
    for (const StudentSummary& student : students) {
        const bool is_alone = counts[student.student] == 1;
        const bool is_name = is_alone && !student.student.empty();
        labels.push_back(is_name ? student.student : student.student + " (" + student.file + ")");
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
