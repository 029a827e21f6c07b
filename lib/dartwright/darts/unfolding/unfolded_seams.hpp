#pragma once

// Private to the room: the seams of a pattern when one of its pieces is unfolded.

#include "dartwright/darts/open.hpp"
#include "dartwright/darts/unfolding/unfolding.hpp"

namespace dartwright {

struct UnfoldedSeams {
    std::vector<Seam> seams;
    std::vector<OpenedSeam> opened;  ///< those of the piece, in the pattern's order
};
/// Precondition: the whole's runs are known. A seam with the half's edge as drawn is one with the drawn half
/// now, a mirrored one is with the added half. Where only one of the two is in the pattern, its mirror image
/// is added: the added half with the mirror image of the other pieces. Impossible for a seam in the fold.
UnfoldedSeams unfolded_seams(const Pattern& pattern, const Unfolding& unfolding);

}  // namespace dartwright
