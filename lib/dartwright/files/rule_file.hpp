#pragma once

#include <string>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/cutting_rule.hpp"

namespace dartwright {

/// Reads a rule from the text of a rule file; `file` is only for messages. InvalidPattern.
CuttingRule read_rule(std::string_view text, const std::string& file);
/// The canonical text of a rule: reading it gives the same rule, and writing that the same bytes.
std::string write_rule(const CuttingRule& rule);
/// Reads a file; `-` is standard input. FileTrouble, InvalidPattern.
CuttingRule read_rule_file(const std::string& path);

}  // namespace dartwright
