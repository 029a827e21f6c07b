#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// What of a piece matters for laying it on cloth, in the piece's own coordinates.
struct LayPiece {
    std::string name;
    std::vector<Point> polygon;  ///< its cutting line, anticlockwise
    Vector grain{0, 1};          ///< unit
    struct FoldLine {
        Point at;
        Vector along;  ///< unit, in outline direction: the piece lies to its left
    };
    std::optional<FoldLine> fold;
    int quantity = 1;
    bool are_alike = false;  ///< copies that are not mirrored
};

/// The piece with its cutting line. Without a grain it is taken to run up the page, and `notes` says so; so
/// it does where the fold is not along the grain. What is not said of the cutting is: one, not on a fold.
/// Requires a sound piece (problems_of is empty): UnsoundPattern.
LayPiece lay_piece(const Piece& piece, const CuttingLine& line, const Tolerances& tolerances,
                   std::vector<std::string>& notes);

}  // namespace dartwright
