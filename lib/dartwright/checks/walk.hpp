#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// What stands at a row of a walk.
enum class WalkMark {
    start,  ///< the ends where the walk begins
    notch,
    dart,         ///< a closed dart's mouth
    part_corner,  ///< where one run of a side gives way to the next
    end           ///< the ends where the walk ends
};

/// One thing met when two edges are laid along each other. Distances are sewn, from the starting end, mm.
struct WalkRow {
    WalkMark mark = WalkMark::start;
    std::string name;  ///< the notch's kind, the dart's name, the edges at the corner
    std::array<std::optional<double>, 2> sides;  ///< on the first and second side; absent where it has none
    std::optional<double> difference;            ///< second - first, where both have it
};

struct SeamWalk {
    std::string name;
    std::array<std::string, 2> side_names;
    std::vector<WalkRow> rows;  ///< in order of the distance (of the first side, where both have it)
    std::array<double, 2> lengths{};
    double ease = 0;        ///< signed: positive when the second side is meant to be longer
    double difference = 0;  ///< second - first - ease
    /// The sums of the two sides' angles at the starting and at the other end, degrees; 180 runs on smoothly.
    std::array<double, 2> corners_deg{};
};

/// Walks a seam. Notches are paired as the checks pair them. UnknownName; Impossible if a piece's outline
/// does not close. Notches beyond the end of their run are left out.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
SeamWalk walk_seam(const Pattern& pattern, const std::string& seam);

}  // namespace dartwright
