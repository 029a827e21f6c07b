#pragma once

// A class as a table for a spreadsheet: comma-separated values after RFC 4180, UTF-8, a row a draft.

#include <string>
#include <vector>

#include "dartwright/assessing/assessment.hpp"

namespace dartwright {

/// Columns: student, file, marks, of, per cent, a column a task, faults (criteria lost by one), and why it
/// was not marked.
std::string class_csv_head(const std::vector<std::string>& tasks);
std::string class_csv_row(const Assessment& assessment, const std::string& label,
                          const std::vector<std::string>& tasks);

/// One cell: control characters left out, quoted if it needs to be, and with an apostrophe before what a
/// spreadsheet would take for a formula.
std::string csv_cell(const std::string& words);

}  // namespace dartwright
