#pragma once

// Private to this room: one piece of a draft, and the same in the names of a piece that is known.

#include <string>
#include <vector>

#include "dartwright/assessing/run_matching.hpp"

namespace dartwright {

/// As it was drawn: anticlockwise, its outline closed.
struct DraftedPiece {
    ShapedPiece shaped;
    double gap_mm = 0;  ///< by which it was open
    std::vector<RunSignature> runs;
    std::vector<std::string> renamed =
        {};  ///< a run of it that was called otherwise than the rest of the edge
};
/// Precondition: it has an outline.
DraftedPiece drafted_piece(Piece piece);

struct MatchedPiece {
    std::size_t drawn = 0;             ///< in the draft
    ShapedPiece shaped;                ///< closed, edges and piece named as in the exercise
    bool is_mirrored = false;          ///< it was drawn the other way up
    double gap_mm = 0;                 ///< by which its outline is open, at the exercise's size
    std::vector<std::string> renamed;  ///< `"A" is the side`: what was recognised by shape
};
/// The way round in which it is the known piece's.
struct KnownAs {
    const ShapedPiece& known;
    const RunMatching& runs;
};
/// The drawn piece in the known one's names, the same way up, its size divided by the scale.
MatchedPiece matched_piece(const DraftedPiece& drawn, const KnownAs& as, double scale);

}  // namespace dartwright
