#pragma once

// A comparison of two patterns, for a person.

#include <string>

#include "dartwright/comparing/compare.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

/// A paragraph a piece, then the seams, the notes, the losses with their remedies, and the verdict.
std::string text_of(const Comparison& comparison, Unit unit, const Ink& ink);

}  // namespace dartwright::tools
