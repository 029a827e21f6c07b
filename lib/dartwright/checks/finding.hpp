#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// A fault must be mended before cutting; a note is said and does not fail the pattern.
enum class Severity { fault, note };

/// One thing that is not true: what, where, by how much, and what to do about it. Lengths are mm, angles
/// degrees (for print and JSON alike). Texts that do not apply are empty, numbers and the place absent.
struct Finding {
    std::string check;  ///< stable name of the check
    Severity severity = Severity::fault;
    std::string piece;
    std::string edge;
    std::string dart;
    std::string seam;
    std::optional<Point> at;
    std::optional<double> measured;
    std::optional<double> expected;
    std::optional<double> difference;
    std::optional<double> allowed;
    std::string message;  ///< one sentence in the trade's words
    std::string remedy;   ///< one sentence: what to do at the table
    /// The command that does it, word by word, without the program's name and the file: `true --piece front
    /// --dart "waist dart"`. Empty where there is none.
    std::vector<std::string> command;
};

}  // namespace dartwright
