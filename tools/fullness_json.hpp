#pragma once

#include <string>
#include <vector>

#include "dartwright/pattern/fullness.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

/// What is gathered or eased away along an edge: sewn distances from its anticlockwise start, and how long
/// the stretch lies flat, mm; whether it is gathered, else it is eased. An empty list where there is none.
Json json_of_fullness(const Piece& piece, const std::vector<Run>& runs, const std::string& edge);

}  // namespace dartwright::tools
