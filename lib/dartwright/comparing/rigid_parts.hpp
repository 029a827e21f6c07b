#pragma once

// Private to the library: the parts of an outline between the mouths of two patterns, and how each was moved.

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// Places on a part are looked at this far apart at most, mm: a curve of a garment that keeps its length
/// hides nothing between two of them that a cutter would see.
inline constexpr double part_spacing_mm = 4;
/// A stretch between two mouths that is narrower than this is left out, mm: it could not be sewn, and stands
/// for one mouth whose place was rounded.
inline constexpr double narrowest_stretch_mm = 1;

/// Places before, and the same places after.
struct MatchedPlaces {
    std::vector<Point> before;
    std::vector<Point> after;
    std::vector<std::size_t> begins;  ///< where those of each stretch of the part begin
};

struct RigidParts {
    std::vector<ComparedPart> parts;
    std::vector<MatchedPlaces> places;  ///< those looked at on each part
};
/// Every part of the outline that has no mouth in it before or after, matched by run and share of the run's
/// sewn length. Runs that only one of the two has, and corners where other runs meet, end a part.
/// O((n + p) log n) for n curves and p places.
RigidParts rigid_parts(const ShapedPair& both);

/// The same for pieces that may differ in fullness. A run that was given fullness is sewn shorter and drawn
/// as it was, one whose dart was closed as gathers the other way round: where the parts do not fit matched by
/// sewn lengths, they are matched by the lengths laid flat if they fit better so. Shares are of the sewn
/// length before either way. O((n + p) log n) for n curves and p places, and O(s n) for s stretches of parts.
RigidParts rigid_parts_whatever_fullness(const PieceBothWays& both, const Tolerances& tolerances);

}  // namespace dartwright
