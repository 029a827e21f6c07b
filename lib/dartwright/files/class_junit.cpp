#include "dartwright/files/class_junit.hpp"

#include <locale>
#include <pugixml.hpp>
#include <sstream>

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/markup_text.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright {
namespace {

void set(pugi::xml_node node, const char* name, const std::string& value) {
    node.append_attribute(name).set_value(clean_text(value).c_str());
}

/// What cost marks, a line each, with its remedy.
std::string costs_text(const JudgedCriterion& criterion, Unit unit) {
    std::string text;
    for (const JudgedLine* line : costly_lines(criterion)) {
        text += clean_text(line_text(*line, unit)) + "\n";
        if (!line->remedy.empty()) text += "Remedy: " + clean_text(line->remedy) + "\n";
    }
    return text;
}

std::string kept_text(const JudgedCriterion& criterion) {
    return marks_text(criterion.marks) + " of " + marks_text(criterion.of) + " marks";
}

void add_testcase(pugi::xml_node suite, const JudgedTask& task, const JudgedCriterion& criterion, Unit unit) {
    pugi::xml_node testcase = suite.append_child("testcase");
    set(testcase, "classname", task.name);
    set(testcase, "name", word_of(criterion.criterion));
    set(testcase, "time", "0");
    if (criterion.marks >= criterion.of) return;
    const std::vector<const JudgedLine*> lines = costly_lines(criterion);
    if (has_lost_by_fault(criterion)) {
        pugi::xml_node failure = testcase.append_child("failure");
        set(failure, "message",
            kept_text(criterion) + (lines.empty() ? "" : "; " + line_text(*lines.front(), unit)));
        set(failure, "type", criterion.rung);
        failure.text().set(costs_text(criterion, unit).c_str());
    } else {
        const std::string words = kept_text(criterion) + "\n" + costs_text(criterion, unit);
        testcase.append_child("system-out").text().set(words.c_str());
    }
}

struct Count {
    std::size_t tests = 0;
    std::size_t failures = 0;
};

Count count_of(const Assessment& assessment) {
    Count count;
    for (const JudgedTask& task : assessment.tasks) {
        count.tests += task.criteria.size();
        for (const JudgedCriterion& criterion : task.criteria)
            if (has_lost_by_fault(criterion)) ++count.failures;
    }
    return count;
}

}  // namespace

std::string class_junit_begin(const std::string& exercise) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"" + markup_text(exercise) +
           "\">\n";
}

std::string class_junit_student(const Assessment& assessment, const std::string& label, Unit unit) {
    const bool is_unread = !assessment.unread.empty();
    const Count count = count_of(assessment);
    pugi::xml_document document;
    pugi::xml_node suite = document.append_child("testsuite");
    set(suite, "name", label);
    set(suite, "tests", std::to_string(is_unread ? 1 : count.tests));
    set(suite, "failures", std::to_string(count.failures));
    set(suite, "errors", is_unread ? "1" : "0");
    set(suite, "skipped", "0");
    set(suite, "time", "0");
    if (is_unread) {
        pugi::xml_node testcase = suite.append_child("testcase");
        set(testcase, "classname", assessment.file);
        set(testcase, "name", "read");
        set(testcase, "time", "0");
        pugi::xml_node error = testcase.append_child("error");
        set(error, "message", assessment.unread);
        set(error, "type", "not marked");
    }
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& criterion : task.criteria) add_testcase(suite, task, criterion, unit);
    std::ostringstream stream;
    stream.imbue(std::locale::classic());
    suite.print(stream, " ", pugi::format_indent, pugi::encoding_utf8);
    return stream.str();
}

std::string class_junit_end() {
    return "</testsuites>\n";
}

}  // namespace dartwright
