#pragma once

// Private to this room.

#include <map>
#include <string>

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The piece with edges called otherwise, wherever they are named. Edges that are not in the map keep their
/// names.
Piece with_edges_renamed(Piece piece, const std::map<std::string, std::string>& names);

}  // namespace dartwright
