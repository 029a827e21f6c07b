#pragma once

#include <string>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

/// ` at line 3, column 7` without the blank in front.
std::string at_line_and_column(std::string_view text, std::size_t offset);

/// What the JSON parser says of a text that is not JSON, in words for someone who typed it by hand: what
/// stands there, and what to type instead where the slip is a common one (a comma too many or missing, a
/// decimal comma, a unit after a number, quotes of a word processor). `offset` is that of the last byte the
/// parser read, or the text's size at its end; `message` is the parser's. One line, never empty.
FileProblem syntax_problem(const std::string& pointer, std::string_view text, std::size_t offset,
                           const std::string& message);

}  // namespace dartwright
