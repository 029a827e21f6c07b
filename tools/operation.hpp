#pragma once

// What the commands that change a pattern have in common: read, operate, write the pattern, and account for
// it.

#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "arguments.hpp"
#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

/// A pattern made by an operation, and what was done, for a person and for a program.
struct Operated {
    Pattern pattern;
    std::string text;
    nlohmann::ordered_json json;
};
using Operation = std::function<Operated(const Pattern& pattern, const Ink& ink)>;

/// Reads the pattern file that is the command's only word, with the tolerances given for this once, and
/// writes the result and its account as `-o`, `--overwrite` and `--format` say.
ExitStatus run_operation(const Arguments& arguments, Invocation& call, const Operation& operation);

/// `--piece`, and the options that every such command has: `-o`, `--overwrite`, `--format`, `--tolerance`.
OptionSpec piece_option(const char* help);
std::vector<OptionSpec> with_operation_options(std::vector<OptionSpec> options);

/// Which part turned, in which direction, and which stayed.
struct TurnSaid {
    double turn_rad = 0;
    const std::vector<std::string>& turned;
    const std::vector<std::string>& held;
};
std::string turn_words(const TurnSaid& turn);
/// One line a note.
std::string note_lines(const std::vector<std::string>& notes);
/// A blank line and one line a run with its length before and after; empty if there are no runs.
std::string runs_table(const std::vector<RunChange>& runs, Unit unit, const Ink& ink);
nlohmann::ordered_json runs_json(const std::vector<RunChange>& runs);

}  // namespace dartwright::tools
