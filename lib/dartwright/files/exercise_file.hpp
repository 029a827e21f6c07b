#pragma once

#include <string>
#include <string_view>

#include "dartwright/assessing/exercise.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

/// Reads an exercise from the text of an exercise file. Files that it names lie where they do seen from
/// `file`, which otherwise is only for messages. What its tasks ask is done to its pattern, so that what
/// cannot be done is refused with the rest. InvalidPattern.
Exercise read_exercise(std::string_view text, const std::string& file);
/// Reads a file; `-` is standard input, seen from which files lie in the present folder. FileTrouble,
/// InvalidPattern.
Exercise read_exercise_file(const std::string& path);

}  // namespace dartwright
