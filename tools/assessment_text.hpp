#pragma once

#include <string>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/words/unit.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

/// A marked draft for a person: the marks first, then each task line by line, and what is to be mended.
/// `label` names the student apart from all others; lengths are written in the unit.
std::string text_of(const Assessment& assessment, const std::string& label, Unit unit, const Ink& ink);

}  // namespace dartwright::tools
