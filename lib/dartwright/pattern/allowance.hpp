#pragma once

#include <optional>
#include <vector>

#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// The allowance of an edge as the piece says it, or null where it is not decided.
const Allowance* allowance_of(const Piece& piece, const std::string& edge);

/// A stretch of a run, by sewn distance from its anticlockwise start, and its width.
struct RunWidth {
    double from_mm = 0;
    double to_mm = 0;
    std::optional<double> width_mm;  ///< absent where not decided
};

/// A stretch that is shorter than this has no width of its own, mm: a pencil line, which nobody cuts round. So a
/// stretch that is meant to end at a corner or a mouth does, though its distance was rounded.
inline constexpr double stretch_joint_mm = 0.1;

/// The widths along the whole run, in order and without gaps; neighbours differ. Of stretches that overlap
/// the first in the file counts.
std::vector<RunWidth> widths_along(const Piece& piece, const Run& run);

}  // namespace dartwright
