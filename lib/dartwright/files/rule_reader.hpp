#pragma once

// Private to the room.

#include "dartwright/files/reading.hpp"
#include "dartwright/pattern/cutting_rule.hpp"

namespace dartwright {

/// The rule that a pattern carries: the keys of a rule file but its version, and a unit of its own.
CuttingRule read_cutting(Reading& reading, const JsonNode& node);

}  // namespace dartwright
