#pragma once

// Private to the room: the path of a joint opened again where darts stand in it.

#include <string>
#include <vector>

#include "dartwright/cutting/raw_line.hpp"

namespace dartwright::cutting {

/// What brings the strand after the darts to where it lies when they are closed as sewn: each is turned about
/// its point and, for legs that differ, moved along its leg.
Motion closing_of(const Piece& piece, const Strands& strands, const Strand& before);

struct MouthPath {
    CutPart first = CutPart::edge;
    std::vector<RawPoint> points;
    std::vector<RawMouth> mouths;  ///< `at` counts in `points`
    std::vector<Sentence> notes;
    bool is_crossing = false;
};
/// The path of the closed joint, split where the line of each dart's leg comes to it, and what lies after
/// moved back.
MouthPath opened(const Piece& piece, Strands& strands, const JointPlace& place, const JointPath& closed);

}  // namespace dartwright::cutting
