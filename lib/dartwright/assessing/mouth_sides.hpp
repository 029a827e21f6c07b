#pragma once

// Private to this room: the parts of a piece on the two sides of a mouth, and how they were moved.

#include <optional>

#include "dartwright/comparing/rigid_parts.hpp"

namespace dartwright {

/// Indices of the parts that end and that begin at a mouth.
struct MouthSides {
    std::size_t before = 0;
    std::size_t after = 0;
};
struct MouthAt {
    std::string edge;
    double share = 0;  ///< of the run's sewn length
};
/// Empty where no part reaches the mouth, as on a run that only one of the two patterns has. `runs` are those
/// of the second pattern, in outline order.
std::optional<MouthSides> mouth_sides(const RigidParts& parts, const std::vector<Run>& runs,
                                      const MouthAt& at);

/// A piece of two patterns with the parts of it that were moved.
struct MovedPiece {
    ShapedPair both;
    const RigidParts& parts;
    std::vector<MouthAt> moved_mouths = {};  ///< those of darts with a leg that is too long or too short
    double legs_off_mm = 0;                  ///< the most that one is
};
struct PartMotions {
    std::vector<Motion> all;
    bool is_certain = false;  ///< a longer stretch is as it was, and so is what lies beside it
};
/// Ways to say how a part was moved: by all of it, and by each longer stretch alone, since what is wrong with
/// one of them is no reason to doubt the others. A stretch of an edge of another length is laid on from
/// either end of the edge.
PartMotions motions_of_part(const MovedPiece& piece, std::size_t part);

/// By how much the sewn length of any run of the piece has changed, mm.
double most_changed_mm(const ShapedPair& both);

/// How a part was moved, a corner of it that was moved otherwise left aside.
Motion robust_motion(const MatchedPlaces& places);
/// How the whole piece lies, by all the places of it.
Motion robust_motion(const RigidParts& parts);

}  // namespace dartwright
