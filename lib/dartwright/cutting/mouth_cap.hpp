#pragma once

// Private to the room: what the cutting line does over a dart's mouth.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/raw_line.hpp"
#include "dartwright/darts/folding/usual_press.hpp"
#include "dartwright/pattern/press_sides.hpp"

namespace dartwright::cutting {

/// The points between the two ends of a mouth, and the dart with it.
struct MouthCap {
    CutDart dart;
    std::vector<RawPoint> between;
    std::vector<Sentence> notes;
};

/// What the caps of one piece ask of all of it. The piece must outlive it.
struct PressesOfPiece {
    explicit PressesOfPiece(const Piece& piece) : usual(piece), sides(piece.outline) {}
    UsualPress usual;
    PressSides sides;
};
MouthCap mouth_cap(const Piece& piece, const RawLine& line, std::size_t mouth, const CuttingRequest& request,
                   PressesOfPiece& presses);

}  // namespace dartwright::cutting
