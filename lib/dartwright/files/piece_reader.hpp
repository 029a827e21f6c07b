#pragma once

#include "dartwright/files/run_names.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

struct PieceRead {
    Piece piece;
    RunNames runs;
    bool is_turned = false;  ///< the file has its outline clockwise
};
/// Reads a piece: its own values, and that the edges it names exist. `start` and `end` follow the outline
/// when it is turned.
PieceRead read_piece(Reading& reading, const JsonNode& node);

}  // namespace dartwright
