#include "dartwright/files/class_tap.hpp"

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/json_lines.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright {
namespace {

/// A description; in it # begins a directive and \ is the sign that takes that meaning away.
std::string description(const std::string& words) {
    std::string out;
    for (const char c : clean_text(words)) {
        if (c == '#' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

/// JSON's text is YAML's double-quoted text, where nothing is a control character.
std::string yaml_text(const std::string& words) {
    return json_text(clean_text(words));
}

}  // namespace

std::string ClassTap::point(bool is_ok, const std::string& words) {
    return (is_ok ? "ok " : "not ok ") + std::to_string(++points_) + " - " + description(words) + "\n";
}

std::string ClassTap::criterion_point(const std::string& label, const JudgedTask& task,
                                      const JudgedCriterion& criterion) {
    std::string text =
        point(!has_lost_by_fault(criterion), label + ": " + task.name + ": " + word_of(criterion.criterion));
    if (criterion.marks >= criterion.of) return text;
    text += "  ---\n  marks: " + marks_text(criterion.marks) + "\n  of: " + marks_text(criterion.of) +
            "\n  rung: " + yaml_text(criterion.rung) + "\n";
    const std::vector<const JudgedLine*> lines = costly_lines(criterion);
    if (!lines.empty()) text += "  lines:\n";
    for (const JudgedLine* line : lines) {
        text += "    - found: " + yaml_text(line_text(*line, unit_)) + "\n";
        if (!line->remedy.empty()) text += "      remedy: " + yaml_text(line->remedy) + "\n";
    }
    return text + "  ...\n";
}

std::string ClassTap::student(const Assessment& assessment, const std::string& label) {
    if (!assessment.unread.empty())
        return point(false, label + ": not marked") + "  ---\n  message: " + yaml_text(assessment.unread) +
               "\n  ...\n";
    std::string text;
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& criterion : task.criteria)
            text += criterion_point(label, task, criterion);
    return text;
}

std::string ClassTap::end() const {
    return "1.." + std::to_string(points_) + "\n";
}

}  // namespace dartwright
