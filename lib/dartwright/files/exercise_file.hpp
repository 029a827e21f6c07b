#pragma once

#include <string>
#include <string_view>

#include "dartwright/assessing/exercise.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

/// Where the files may lie that an exercise names: a pattern, rules.
enum class NamedFiles {
    anywhere,
    in_own_folder,  ///< of the exercise, or below it, wherever links lead: for one that somebody else sent
};

/// Reads an exercise from the text of an exercise file. Files that it names lie where they do seen from
/// `file`, which otherwise is only for messages; pipes and devices are refused, and what is no pattern or
/// rule is not quoted. What its tasks ask is done to its pattern, so that what cannot be done is refused with
/// the rest. InvalidPattern.
Exercise read_exercise(std::string_view text, const std::string& file,
                       NamedFiles named = NamedFiles::anywhere);
/// Reads a file; `-` is standard input, seen from which files lie in the present folder. FileTrouble,
/// InvalidPattern.
Exercise read_exercise_file(const std::string& path, NamedFiles named = NamedFiles::anywhere);

}  // namespace dartwright
