#pragma once

// Private to the room: how the allowance of a seam ends where the seam does.

#include <optional>
#include <vector>

#include "dartwright/cutting/chain_view.hpp"

namespace dartwright::cutting {

/// A seam's end at a corner.
struct SeamEnd {
    Point corner;
    Vector along;    ///< unit, the way the seam goes on beyond its end
    Vector outside;  ///< unit, square to it, to its allowance
    double width_mm = 0;
    const ChainView& own;    ///< its cutting line, from the corner on
    const ChainView& other;  ///< the neighbour's
};

/// The end of the allowance, from where the seam, sewn on straight, comes to the neighbour's cutting line,
/// out to the seam's own. The sides on which its two ends lie; 0: on the straight extension.
struct SeamEndShape {
    std::vector<Point> from_seam;
    std::size_t other_side = 0;
    std::size_t own_side = 0;
};

/// Square to the seam. Empty if the seam comes to the neighbour's cutting line only beyond the reach.
std::optional<SeamEndShape> squared_end(const SeamEnd& seam, double reach_mm);
/// The mirror image of the neighbour's cutting line in the seam, so that the two lie on each other when the
/// allowance is folded over along it. Empty as well if the neighbour is too short for that.
std::optional<SeamEndShape> mirrored_end(const SeamEnd& seam, double reach_mm);

}  // namespace dartwright::cutting
