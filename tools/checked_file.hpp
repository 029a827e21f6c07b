#pragma once

// One file's part of a check's result: what was found, or why it could not be read.

#include <optional>
#include <string>

#include "command.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

struct CheckedFile {
    std::string path;  ///< as it was given
    Unit unit = Unit::mm;
    std::optional<CheckReport> report;
    std::string error;                  ///< why there is no report, on one line
    std::vector<FileProblem> problems;  ///< all of a file that is not valid
    std::size_t more_problems = 0;      ///< beyond those
    ExitStatus status = ExitStatus::done;
};

/// How many faults and notes a report has.
struct FindingCount {
    std::size_t faults = 0;
    std::size_t notes = 0;
};
FindingCount count_findings(const CheckReport& report);

/// What is wrong with a file that is not valid, on one line and without its name: the first problem, and how
/// many more there are.
std::string first_problem(const InvalidPattern& invalid);
/// The same of a file that is not a pattern, with its name: `check` cannot list the others.
std::string first_problem_of_other(const InvalidPattern& invalid);

/// A message without the file's name that every message of a reader begins with.
std::string without_name(const std::string& message, const std::string& path);

/// All of them, still on one line: no other command lists those of a rule.
std::string all_problems(const InvalidPattern& invalid);

/// The file's name for a person.
std::string shown_path(const std::string& path);

/// For a person: a heading, a line a seam and a dart, the findings with their remedies, the verdict.
std::string text_of(const CheckedFile& file, const Ink& ink);
/// One JSON object on one line.
std::string json_of(const CheckedFile& file);
/// Why the file is not true, on one line and without its name; empty if it is.
std::string reason_of(const CheckedFile& file);

}  // namespace dartwright::tools
