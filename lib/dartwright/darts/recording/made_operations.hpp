#pragma once

// Private to the room: the table of the operations that a `made` list can name.

#include <functional>

#include "dartwright/darts/recording/request_words.hpp"

namespace dartwright {

/// What a request asks for, ready to be done to a pattern.
using MadeOperation = std::function<Pattern(const Pattern&)>;

struct OperationKind {
    const char* name;
    /// Reads the request's words, every one of them. BadWords.
    MadeOperation (*read)(RequestWords& words);
};
const std::vector<OperationKind>& operation_kinds();

/// Throws BadWords for an operation that there is none of, or a request with words missing, wrong or too
/// many.
MadeOperation read_operation(const Made& made);

}  // namespace dartwright
