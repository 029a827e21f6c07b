#pragma once

#include "dartwright/files/piece_reader.hpp"

namespace dartwright {

/// The pieces of a pattern as its seams refer to them.
struct PiecesRead {
    std::vector<PieceRead> pieces;
    bool is_every_name_read = false;  ///< otherwise an unknown name may only be a piece that failed
};
/// Reads a seam: its own values, and that the pieces, edges and ends it names exist.
Seam read_seam(Reading& reading, const JsonNode& node, const PiecesRead& pieces);

}  // namespace dartwright
