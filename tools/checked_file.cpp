#include "checked_file.hpp"

#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/lengths.hpp"
#include "named_command.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

std::string counted(std::size_t count, const char* word) {
    return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

/// What a finding is about: `seam side, piece front, edge side`.
std::string subject_of(const Finding& finding) {
    std::string words;
    const auto add = [&](const char* kind, const std::string& name) {
        if (!name.empty()) words += std::string(words.empty() ? "" : ", ") + kind + " " + name;
    };
    add("seam", finding.seam);
    add("piece", finding.piece);
    add("dart", finding.dart);
    add("edge", finding.edge);
    return words;
}

std::string finding_lines(std::size_t number, const Finding& finding, const CheckedFile& file,
                          const Ink& ink) {
    const bool is_fault = finding.severity == Severity::fault;
    const std::string lead = "  " + std::to_string(number) + ". ";
    const std::string indent(lead.size(), ' ');
    std::string text =
        lead + ink(is_fault ? Paint::bad : Paint::warning, is_fault ? "fault" : "note") + " " + finding.check;
    const std::string subject = subject_of(finding);
    if (!subject.empty()) text += ": " + subject;
    if (finding.at)
        text += ", at " + length_figure(finding.at->x, file.unit) + ", " +
                length_figure(finding.at->y, file.unit) + " " + word_of(file.unit);
    text += "\n" + indent + finding.message + "\n";
    if (!finding.remedy.empty()) text += indent + "Remedy: " + finding.remedy + "\n";
    const std::string command = named_command(finding.command, file.path);
    if (!command.empty()) text += indent + "Command: " + clean_text(command) + "\n";
    return text;
}

std::string checked_words(const CheckReport& report) {
    if (report.seams.empty() && report.darts.empty()) return "no seam and no dart to check";
    return (report.seams.empty() ? "no seam" : counted(report.seams.size(), "seam")) + " and " +
           (report.darts.empty() ? "no dart" : counted(report.darts.size(), "dart")) + " checked";
}

std::string verdict_line(const CheckReport& report, const Ink& ink) {
    const FindingCount count = count_findings(report);
    const std::string notes = count.notes == 0 ? "" : counted(count.notes, "note");
    if (report.passed)
        return ink(Paint::good, "True") + ": " + checked_words(report) + ", no fault" +
               (notes.empty() ? "" : " and " + notes) + "\n";
    return ink(Paint::bad, "Not true") + ": " + counted(count.faults, "fault") +
           (notes.empty() ? "" : " and " + notes) + "\n";
}

std::string words_of(const FileProblem& problem) {
    std::string words = problem.pointer;
    if (!words.empty()) words += ": ";
    return words + "found " + problem.found + "; expected " + problem.expected;
}

std::string unread_text(const CheckedFile& file, const Ink& ink) {
    std::string text = "  " + ink(Paint::bad, "not checked") + ": ";
    if (file.problems.empty()) return text + clean_text(file.error) + "\n";
    text +=
        "not a valid pattern file, " + counted(file.problems.size() + file.more_problems, "problem") + "\n";
    for (const FileProblem& problem : file.problems) text += "  " + words_of(problem) + "\n";
    if (file.more_problems > 0) text += "  and " + counted(file.more_problems, "more problem") + "\n";
    return text;
}

}  // namespace

FindingCount count_findings(const CheckReport& report) {
    FindingCount count;
    for (const Finding& finding : report.findings)
        ++(finding.severity == Severity::fault ? count.faults : count.notes);
    return count;
}

std::string first_problem(const InvalidPattern& invalid) {
    std::string words = words_of(invalid.problems.front());
    const std::size_t others = invalid.problems.size() - 1 + invalid.more;
    const std::string listed =
        invalid.more > 0 ? "the first " + std::to_string(invalid.problems.size()) : std::string("all");
    if (others > 0)
        words += " (and " + counted(others, "more problem") + "; dartwright check lists " + listed + ")";
    return words;
}

std::string first_problem_of_other(const InvalidPattern& invalid) {
    std::string words = invalid.file + ": " + words_of(invalid.problems.front());
    const std::size_t others = invalid.problems.size() - 1 + invalid.more;
    return others == 0 ? words : words + " (and " + counted(others, "more problem") + ")";
}

std::string without_name(const std::string& message, const std::string& path) {
    const std::string lead = (path == "-" ? "standard input" : path) + ": ";
    return message.compare(0, lead.size(), lead) == 0 ? message.substr(lead.size()) : message;
}

std::string all_problems(const InvalidPattern& invalid) {
    std::string words;
    for (const FileProblem& problem : invalid.problems)
        words += (words.empty() ? "" : "; also ") + words_of(problem);
    if (invalid.more > 0) words += "; and " + counted(invalid.more, "more problem");
    return words;
}

std::string shown_path(const std::string& path) {
    if (path.empty()) return "''";
    return path == "-" ? "standard input" : clean_text(path);
}

std::string text_of(const CheckedFile& file, const Ink& ink) {
    std::string text = ink(Paint::heading, shown_path(file.path));
    if (!file.report) return text + "\n" + unread_text(file, ink);
    const CheckReport& report = *file.report;
    if (!report.name.empty()) text += ": " + report.name;
    text += "\n";
    for (const std::string& table : {seam_table(report.seams, report.findings, file.unit, ink),
                                     dart_table(report.darts, file.unit, ink)}) {
        if (!table.empty()) text += "\n" + table;
    }
    if (!report.findings.empty()) text += "\n  " + ink(Paint::heading, "findings") + "\n";
    std::size_t number = 0;
    for (const Finding& finding : report.findings) text += finding_lines(++number, finding, file, ink);
    return text + "\n  " + verdict_line(report, ink);
}

std::string json_of(const CheckedFile& file) {
    Json json{{"file", file.path},
              {"name", file.report ? Json(file.report->name) : Json(nullptr)},
              {"passed", file.report && file.report->passed}};
    if (!file.report) {
        json["error"] = file.error;
        json["problems"] = Json::array();
        for (const FileProblem& problem : file.problems) {
            json["problems"].push_back(
                Json{{"pointer", problem.pointer}, {"found", problem.found}, {"expected", problem.expected}});
        }
        json["more_problems"] = file.more_problems;
    }
    json["findings"] = Json::array();
    json["seams"] = Json::array();
    json["darts"] = Json::array();
    if (file.report) {
        for (const Finding& finding : file.report->findings) {
            Json found = json_of(finding);
            const std::string command = named_command(finding.command, file.path);
            found["command"] = command.empty() ? Json(nullptr) : Json(command);
            json["findings"].push_back(std::move(found));
        }
        json["seams"] = json_of(file.report->seams);
        for (const DartVerdict& dart : file.report->darts) json["darts"].push_back(json_of(dart));
    }
    return json_line(json);
}

std::string reason_of(const CheckedFile& file) {
    if (!file.report) return file.error;
    if (file.report->passed) return {};
    for (const Finding& finding : file.report->findings) {
        if (finding.severity != Severity::fault) continue;
        const std::size_t faults = count_findings(*file.report).faults;
        const std::string subject = subject_of(finding);
        return counted(faults, "fault") +
               (subject.empty() ? "" : (faults == 1 ? ": " : "; the first: ") + subject);
    }
    return "not true";
}

}  // namespace dartwright::tools
