#pragma once

// How a run ends that was not done: its exit status, and what is said of it.

#include <exception>
#include <string>

#include "command.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

struct Ending {
    ExitStatus status = ExitStatus::internal;
    std::string words;
    bool names_its_file = false;  ///< the words do, so that the subject is not said again
    /// For another program: `kind`, and what belongs to it (`reason` and `remedy`; what was asked for and
    /// what there is; `problems` of a file).
    Json details = {};
};

/// Lengths are told in the unit of the file worked on.
Ending ending_of(const std::exception_ptr& thrown, Unit unit);

/// Whether a result was asked for as JSON, by words that may be wrong in all else; the last one counts.
bool is_json_asked_for(const std::vector<std::string>& words);

/// One line of JSON, in ASCII: what `call` worked on, and how it ended. `name` is that of program and command.
std::string json_line_of(const Ending& ending, const std::string& name, const Invocation& call);

}  // namespace dartwright::tools
