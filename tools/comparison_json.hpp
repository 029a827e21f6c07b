#pragma once

// A comparison of two patterns, for another program: lengths in mm, angles in degrees.

#include "dartwright/comparing/compare.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

Json json_of(const Comparison& comparison);

}  // namespace dartwright::tools
