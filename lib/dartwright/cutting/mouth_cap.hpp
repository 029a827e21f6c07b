#pragma once

// Private to the room: what the cutting line does over a dart's mouth.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/raw_line.hpp"

namespace dartwright::cutting {

/// The points between the two ends of a mouth, and the dart with it.
struct MouthCap {
    CutDart dart;
    std::vector<RawPoint> between;
    std::vector<Sentence> notes;
};
MouthCap mouth_cap(const Piece& piece, const RawLine& line, std::size_t mouth, const CuttingRequest& request);

}  // namespace dartwright::cutting
