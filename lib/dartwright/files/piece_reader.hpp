#pragma once

#include "dartwright/files/end_names.hpp"
#include "dartwright/pattern/piece.hpp"

namespace dartwright {

struct PieceRead {
    Piece piece;
    RunNames runs;
};
/// Reads a piece as the file has it: its own values, and that the edges it names exist.
PieceRead read_piece(Reading& reading, const JsonNode& node);

}  // namespace dartwright
