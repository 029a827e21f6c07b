#pragma once

#include <string>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/cutting_rule.hpp"

namespace dartwright {

/// The same of a file that is not a valid rule.
class InvalidRule : public InvalidPattern {
    using InvalidPattern::InvalidPattern;
};

/// Reads a rule from the text of a rule file; `file` is only for messages. InvalidRule.
CuttingRule read_rule(std::string_view text, const std::string& file);
/// The canonical text of a rule: reading it gives the same rule, and writing that the same bytes.
std::string write_rule(const CuttingRule& rule);
/// Reads a file; `-` is standard input. FileTrouble, InvalidRule.
CuttingRule read_rule_file(const std::string& path);

}  // namespace dartwright
