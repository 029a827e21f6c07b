#pragma once

// Private to the room: how the lines beside two neighbouring curves are joined.

#include <vector>

#include "dartwright/cutting/strands.hpp"

namespace dartwright::cutting {

/// A point of the cutting line before it is cleaned, and what the side that begins at it belongs to.
struct RawPoint {
    Point at;
    CutSide side;
};

/// The path from the last kept point of one strand to the first kept point of the next.
struct JointPath {
    CutPart first = CutPart::edge;  ///< what its first side belongs to
    std::vector<RawPoint> points;
    CornerKind kind = CornerKind::met;
    bool is_step = false;
    bool is_blunted_unasked = false;
    bool is_limit_raised = false;  ///< blunted no nearer than the wider allowance, though less was asked
    bool is_not_as_asked = false;  ///< what was asked for does not fit there, so the corner is met
    bool is_crossing = false;      ///< the strands cross, and are to be trimmed by the clean-up
};

/// What is to be made of a joint.
struct JointWanted {
    CornerKind kind = CornerKind::met;
    bool whose_is_first = true;  ///< of the two strands, where the kind speaks of one
    std::optional<double> limit_mm;
};

/// The end of one strand and the start of the next, which is moved by `closing` where darts stand between.
struct JointPlace {
    std::size_t before = 0;  ///< index of the strand
    std::size_t after = 0;
    Motion closing;
    bool is_corner = false;  ///< of two edges, rather than inside one
};

/// A joint that is one point, or none where the one strand ends where the next begins.
struct PlainJoint {
    std::optional<RawPoint> point;
    CutPart first = CutPart::edge;  ///< what the side before the point belongs to
    bool is_inside = false;         ///< the point lies on both strands, which it trims by one side each
};
/// The common case by itself, for it is most of the work: strands without a dart between them that run on,
/// meet outside within the reach, or are two straight lines that cross. Empty for every other.
std::optional<PlainJoint> plain_joint(const Strands& strands, const Strand& before, const Strand& after);

/// Joins them, and trims the two strands to where the path begins and ends.
JointPath joined(Strands& strands, const JointPlace& place, const JointWanted& wanted);

}  // namespace dartwright::cutting
