#include "dartwright/files/class_csv.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright {
namespace {

/// What makes a spreadsheet compute: = + - @, and their full-width forms, which some take for the same (after
/// the advice of OWASP on CSV injection; from memory, not verified).
constexpr std::array<std::string_view, 8> formula_signs{"=",      "+",      "-",      "@",
                                                        "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"};

bool is_taken_for_formula(const std::string& words) {
    // Tabs and line ends have become blanks here, and a spreadsheet may trim those before it looks.
    const std::size_t first = words.find_first_not_of(' ');
    if (first == std::string::npos) return false;
    return std::any_of(formula_signs.begin(), formula_signs.end(),
                       [&](std::string_view sign) { return words.compare(first, sign.size(), sign) == 0; });
}

std::string row_of(const std::vector<std::string>& cells) {
    std::string row;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (i > 0) row += ',';
        row += cells[i];
    }
    return row + "\r\n";
}

std::size_t faults_in(const Assessment& assessment) {
    std::size_t faults = 0;
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& criterion : task.criteria)
            if (has_lost_by_fault(criterion)) ++faults;
    return faults;
}

std::string task_cell(const Assessment& assessment, const std::string& name) {
    for (const JudgedTask& task : assessment.tasks)
        if (task.name == name) return marks_text(task.marks);
    return "";
}

}  // namespace

std::string csv_cell(const std::string& words) {
    std::string cell = clean_text(words);
    if (is_taken_for_formula(cell)) cell.insert(0, 1, '\'');
    if (cell.find_first_of("\",") == std::string::npos) return cell;
    std::string quoted = "\"";
    for (const char c : cell) quoted.append(c == '"' ? 2 : 1, c);
    return quoted + '"';
}

std::string class_csv_head(const std::vector<std::string>& tasks) {
    std::vector<std::string> cells{"student", "file", "marks", "of", "per cent"};
    for (const std::string& task : tasks) cells.push_back(csv_cell(task));
    cells.emplace_back("faults");
    cells.emplace_back("not marked because");
    return row_of(cells);
}

std::string class_csv_row(const Assessment& assessment, const std::string& label,
                          const std::vector<std::string>& tasks) {
    const bool is_marked = assessment.unread.empty();
    const bool has_share = is_marked && assessment.of > 0;
    std::vector<std::string> cells{csv_cell(label), csv_cell(name_of_file(assessment.file)),
                                   is_marked ? marks_text(assessment.marks) : "",
                                   is_marked ? marks_text(assessment.of) : "",
                                   has_share ? marks_text(100 * assessment.marks / assessment.of) : ""};
    for (const std::string& task : tasks) cells.push_back(task_cell(assessment, task));
    cells.push_back(is_marked ? std::to_string(faults_in(assessment)) : "");
    cells.push_back(csv_cell(assessment.unread));
    return row_of(cells);
}

}  // namespace dartwright
