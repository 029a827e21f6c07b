#pragma once

#include <exception>
#include <string>

#include "command.hpp"

namespace dartwright::tools {

/// What ended a piece of work and lies in no file: too little memory, or a mistake of the program's.
struct Unforeseen {
    ExitStatus status = ExitStatus::internal;
    std::string words;  ///< `out of memory while judging it`, `internal error while judging it: ...`
};
/// `doing` is empty or what was being done: ` while judging it`.
Unforeseen unforeseen(const std::exception_ptr& thrown, const std::string& doing = {});

}  // namespace dartwright::tools
