#pragma once

#include <array>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct TrueSeamRequest {
    std::string seam;
    std::string end;                ///< by the edge that crosses there
    std::string move = "both";      ///< half on each side; or a piece of the one that moves; or 1 or 2
    double span_mm = true_span_mm;  ///< how far from the seam the edges that cross it are redrawn
};

/// What became of one side at that end.
struct TruedSide {
    std::string piece;
    std::string edge;      ///< the run of the seam that ends there
    std::string crossing;  ///< the edge that crosses the seam there
    double moved_mm = 0;   ///< by how much the run grew; negative where it was cut
    double corner_before_deg = 0;
    double corner_after_deg = 0;
    double span_mm = 0;  ///< of the crossing edge redrawn
};
struct RunsOfPiece {
    std::string piece;
    std::vector<RunChange> runs;
};
struct TrueSeamAccount {
    std::string seam;
    std::string end;
    LaidAs laid = LaidAs::flat;
    double difference_before_mm = 0;
    double difference_after_mm = 0;
    std::array<TruedSide, 2> sides;
    std::vector<SeamChange> seams;    ///< the other seams whose difference changed
    std::vector<RunsOfPiece> pieces;  ///< those of the seam's end, once each
    std::vector<std::string> notes;
};
struct TrueSeamResult {
    Pattern pattern;
    TrueSeamAccount account;
};

/// Makes a seam true at one of its ends: the end moves along the seam's own edge, on one side or half on
/// each, so that the difference is 0; and the two edges that cross the seam there are laid together along
/// it and drawn smooth through its end, over the span, so that their corners add up to 180 degrees. Where the
/// pieces are laid on each other, the one that moves is laid on the other and its crossing edge is drawn from
/// the new end in the direction of the other's, so that their corners are equal; where both move, both are
/// drawn in the direction midway. Where the file says that the corner is free, each is brought to the new
/// end in its own direction instead. Beyond the span nothing moves. Notches keep the distance by which their
/// seam is walked; one on a strip that is cut off is left, which is noted. A seam that is true there to
/// rounding is left as it is. The request is appended to `made`. Throws Impossible (no edge can be drawn
/// there; a dart's mouth within the span; a move of more than the span or the edge; the redrawn edge would
/// leave the piece), UnknownName, BadWords (span under 1 mm, a side that is none). O(n log n). Requires a
/// sound pattern (problems_of is empty): UnsoundPattern.
TrueSeamResult true_seam(const Pattern& pattern, const TrueSeamRequest& request);

}  // namespace dartwright
