#include "assessment_text.hpp"

#include <algorithm>
#include <utility>

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright::tools {
namespace {

Paint paint_of(const JudgedCriterion& criterion) {
    if (criterion.marks >= criterion.of) return Paint::good;
    return has_lost_by_fault(criterion) ? Paint::bad : Paint::warning;
}

std::string kept(double marks, double of) {
    return marks_text(marks) + " of " + marks_text(of);
}

/// Lines that cost marks are numbered through the draft, and so are their remedies.
class TaskTables {
  public:
    TaskTables(Unit unit, const Ink& ink) : unit_(unit), ink_(ink) {}

    std::string text_of(const JudgedTask& task) {
        TextTable table({{"no."},
                         {"marks", Align::left},
                         {"judged by", Align::left},
                         {"what", Align::left},
                         {"asked"},
                         {"found"},
                         {"off by"},
                         {"rung", Align::left}});
        Remedies said;
        for (const JudgedCriterion& criterion : task.criteria) add(table, said, criterion);
        std::string remedies;
        for (const auto& [remedy, numbers] : said)
            remedies += "  Remedy of " + all_of(numbers) + ": " + clean_text(remedy) + "\n";
        const std::string heading = clean_text(task.name) + ": " + kept(task.marks, task.of) + " marks";
        return "\n  " + ink_(Paint::heading, heading) + "\n" + (table.is_empty() ? "" : table.text(ink_)) +
               remedies;
    }

  private:
    /// Each once, with the numbers of what it mends.
    using Remedies = std::vector<std::pair<std::string, std::vector<std::string>>>;

    static void say(Remedies& said, const std::string& remedy, const std::string& number) {
        const auto same =
            std::find_if(said.begin(), said.end(), [&](const auto& each) { return each.first == remedy; });
        if (same == said.end())
            said.push_back({remedy, {number}});
        else
            same->second.push_back(number);
    }

    void add(TextTable& table, Remedies& remedies, const JudgedCriterion& criterion) {
        const std::vector<const JudgedLine*> costly = costly_lines(criterion);
        std::string marks = kept(criterion.marks, criterion.of);
        std::string judged_by = word_of(criterion.criterion);
        const Paint paint = paint_of(criterion);
        if (criterion.lines.empty())
            table.add({{""}, {marks, paint}, {judged_by}, {""}, {""}, {""}, {""}, {criterion.rung}});
        for (const JudgedLine& line : criterion.lines) {
            std::string number;
            if (std::find(costly.begin(), costly.end(), &line) != costly.end()) {
                number = std::to_string(++numbered_);
                if (!line.remedy.empty()) say(remedies, line.remedy, number);
            }
            table.add({{number},
                       {std::exchange(marks, ""), paint},
                       {std::exchange(judged_by, "")},
                       {clean_text(what_text(line))},
                       {clean_text(expected_text(line, unit_))},
                       {clean_text(found_text(line, unit_))},
                       {difference_text(line, unit_)},
                       {clean_text(line.rung)}});
        }
    }

    Unit unit_;
    const Ink& ink_;
    std::size_t numbered_ = 0;
};

}  // namespace

std::string text_of(const Assessment& assessment, const std::string& label, Unit unit, const Ink& ink) {
    std::string text = ink(Paint::heading, clean_text(label)) + ": ";
    if (!assessment.unread.empty()) {
        return text + ink(Paint::bad, "not marked") + "\n  file: " + clean_text(assessment.file) + "\n  " +
               clean_text(assessment.unread) + "\n";
    }
    const bool has_all = assessment.marks >= assessment.of;
    const Paint paint = has_all ? Paint::good : has_lost_by_fault(assessment) ? Paint::bad : Paint::warning;
    text += ink(paint, verdict_text(assessment)) + "\n  file: " + clean_text(assessment.file) + "\n";
    for (const std::string& note : assessment.notes) text += "  note: " + clean_text(note) + "\n";
    TaskTables tables(unit, ink);
    for (const JudgedTask& task : assessment.tasks) text += tables.text_of(task);
    return text;
}

}  // namespace dartwright::tools
