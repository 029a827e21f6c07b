#pragma once

// Private to this room: which run of a draft's piece is which of the exercise's, by names and by shape.

#include <string>
#include <vector>

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// A run as it is recognised: what moving darts does not change.
struct RunSignature {
    std::string edge;
    double share = 0;       ///< of the sewn length around
    double corner_rad = 0;  ///< at its end, darts there closed
};
std::vector<RunSignature> signatures_of(const ShapedPiece& shaped);

/// How runs of the draft answer to those expected.
struct RunMatching {
    bool is_mirrored = false;  ///< they follow each other the other way round
    /// Of each expected run the draft's, by its place in the draft's list; none where there is none.
    std::vector<std::optional<std::size_t>> drawn;
    double misfit = 0;   ///< 0 where shape and names are the same; over `worst_misfit` nobody would say it is
                         ///< that piece
    double surplus = 0;  ///< of the draft's length around, what by names alone is none of the expected runs
};
inline constexpr double worst_misfit = 0.5;

/// The ways round that fit nearly as well as the best one, those not mirrored first. Where the numbers of
/// runs differ, the one by names alone. O(n^2).
std::vector<RunMatching> matched_runs(const std::vector<RunSignature>& expected,
                                      const std::vector<RunSignature>& drawn);

}  // namespace dartwright
