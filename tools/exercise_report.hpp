#pragma once

// An exercise for the one who sets it: what each mark is for, and what a pattern gets that nobody has
// touched.

#include <string>

#include "dartwright/assessing/assess.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

/// What the pattern gets as it is handed out, in a sentence.
std::string untouched_text(const Assessment& untouched);

/// For a person: a line a criterion with its marks and what of them the untouched pattern has.
std::string exercise_text(const PreparedExercise& exercise, const Ink& ink);
/// The same as one JSON object.
std::string exercise_json(const PreparedExercise& exercise);

}  // namespace dartwright::tools
