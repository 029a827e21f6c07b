#pragma once

// Private to the room: the raw line with the mouths of its darts bridged by their caps.

#include <vector>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/cutting/raw_line.hpp"

namespace dartwright::cutting {

struct Bridged {
    SidedLine line;
    std::vector<CutDart> darts;
    std::vector<Sentence> notes;
};
/// The caps of a mouth that comes back over the one before it end where they meet: on the ray between the
/// two legs. O(n + k) for n points and k points of caps.
Bridged bridged(const Piece& piece, const RawLine& raw, const CuttingRequest& request);

}  // namespace dartwright::cutting
