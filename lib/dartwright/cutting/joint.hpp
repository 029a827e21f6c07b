#pragma once

// Private to the room: how the lines beside two neighbouring curves are joined.

#include <vector>

#include "dartwright/cutting/sided_line.hpp"
#include "dartwright/cutting/strands.hpp"

namespace dartwright::cutting {

/// Two ends as near to each other need no path between them, mm: a hundredth of the line's error.
inline constexpr double same_end_mm = 1e-4;

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

/// Joins them, and trims the two strands to where the path begins and ends.
JointPath joined(Strands& strands, const JointPlace& place, const JointWanted& wanted);

}  // namespace dartwright::cutting
