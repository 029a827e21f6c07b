#pragma once

// Private to the room.

#include <string>
#include <vector>

#include "dartwright/pattern/cutting_rule.hpp"

namespace dartwright {

/// The members of a rule as `key: value`, on lines with this indent.
std::vector<std::string> rule_members(const CuttingRule& rule, std::size_t indent);

}  // namespace dartwright
