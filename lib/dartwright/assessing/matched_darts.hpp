#pragma once

// Private to this room: which dart of a draft is which, by where it stands. Names say nothing.

#include <vector>

#include "dartwright/assessing/exercise_plan.hpp"

namespace dartwright {

struct DartsOfPiece {
    std::vector<const AskedDart*> asked;
    std::vector<const AskedClosed*> closed;
    double around_mm = 0;                    ///< sewn length around the piece
    const std::vector<Run>* runs = nullptr;  ///< the draft's, for places from the other end
};
struct MatchedDarts {
    std::vector<std::optional<std::size_t>> asked;   ///< of each, the draft's
    std::vector<std::optional<std::size_t>> closed;  ///< what is left open there
    std::vector<std::size_t> extra;
};
/// First what stands near where it was asked; then what still stands where it was to be closed; then the
/// others, nearest first: a dart in the wrong place is still that dart. O(n^2 log n).
MatchedDarts matched_darts(const DartsOfPiece& piece, const std::vector<StandingDart>& drawn);

}  // namespace dartwright
