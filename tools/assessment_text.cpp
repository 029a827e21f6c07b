#include "assessment_text.hpp"

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/clean_text.hpp"

namespace dartwright::tools {
namespace {

Paint paint_of(const JudgedCriterion& criterion) {
    if (criterion.marks >= criterion.of) return Paint::good;
    return has_lost_by_fault(criterion) ? Paint::bad : Paint::warning;
}

std::string kept(double marks, double of) {
    return marks_text(marks) + " of " + marks_text(of);
}

void add_rows(TextTable& table, const JudgedCriterion& criterion) {
    std::string marks = kept(criterion.marks, criterion.of);
    std::string judged_by = word_of(criterion.criterion);
    if (criterion.lines.empty())
        table.add({{marks, paint_of(criterion)}, {judged_by}, {""}, {""}, {""}, {""}, {criterion.rung}});
    for (const JudgedLine& line : criterion.lines) {
        table.add({{std::exchange(marks, ""), paint_of(criterion)},
                   {std::exchange(judged_by, "")},
                   {clean_text(line.what)},
                   {clean_text(expected_text(line))},
                   {clean_text(found_text(line))},
                   {difference_text(line)},
                   {clean_text(line.rung)}});
    }
}

std::string task_text(const JudgedTask& task, const Ink& ink) {
    TextTable table({{"marks", Align::left},
                     {"judged by", Align::left},
                     {"what", Align::left},
                     {"expected"},
                     {"found"},
                     {"off by"},
                     {"rung", Align::left}});
    for (const JudgedCriterion& criterion : task.criteria) add_rows(table, criterion);
    std::string text =
        "\n  " + ink(Paint::heading, clean_text(task.name) + ": " + kept(task.marks, task.of) + " marks") +
        "\n";
    if (!table.is_empty()) text += table.text(ink);
    for (const JudgedCriterion& criterion : task.criteria)
        for (const JudgedLine* line : costly_lines(criterion))
            if (!line->remedy.empty())
                text += "  Remedy (" + clean_text(line->what) + "): " + clean_text(line->remedy) + "\n";
    return text;
}

}  // namespace

std::string text_of(const Assessment& assessment, const std::string& label, const Ink& ink) {
    std::string text = ink(Paint::heading, clean_text(label)) + ": ";
    if (!assessment.unread.empty()) {
        return text + ink(Paint::bad, "not marked") + "\n  file: " + clean_text(assessment.file) + "\n  " +
               clean_text(assessment.unread) + "\n";
    }
    const bool has_all = assessment.marks >= assessment.of;
    const Paint paint = has_all ? Paint::good : has_lost_by_fault(assessment) ? Paint::bad : Paint::warning;
    text += ink(paint, verdict_text(assessment)) + "\n  file: " + clean_text(assessment.file) + "\n";
    for (const std::string& note : assessment.notes) text += "  note: " + clean_text(note) + "\n";
    for (const JudgedTask& task : assessment.tasks) text += task_text(task, ink);
    return text;
}

}  // namespace dartwright::tools
