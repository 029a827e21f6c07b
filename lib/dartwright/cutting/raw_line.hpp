#pragma once

// Private to the room: the cutting line before what runs into itself is trimmed, with its mouths open.

#include <optional>
#include <vector>

#include "dartwright/cutting/chain_view.hpp"
#include "dartwright/cutting/joint.hpp"

namespace dartwright::cutting {

/// A dart's mouth on the cutting line: A' is point `at` of the line, B' the next.
struct RawMouth {
    std::size_t at = 0;
    std::size_t item = 0;
    Motion closing;  ///< brings B' to A'
    /// Between the legs of the mouth before and of this one, if the line comes back over them to get here.
    std::optional<Ray> meets_last{};
};

struct RawLine {
    SidedLine line;
    std::vector<RawMouth> mouths;  ///< in order
    std::vector<CutCorner> corners;
    std::vector<UndecidedStretch> undecided;
    std::vector<Sentence> notes;
    bool is_crossing = false;  ///< it is known to cross itself
};

/// Precondition: the outline is closed. Throws BadWidth, UnknownName, BadWords.
RawLine raw_line(const Piece& piece, const CuttingRequest& request);

}  // namespace dartwright::cutting
