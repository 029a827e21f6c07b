#pragma once

// Private to the room: the outer line of one that runs into itself.

#include <cstddef>
#include <optional>

#include "dartwright/cutting/sided_line.hpp"

namespace dartwright::cutting {

inline constexpr double nudge_mm = 1e-6;
inline constexpr std::size_t most_clean_up_rounds = 8;

/// The outer boundary of what a closed line winds round: a simple polygon. Precondition: the line winds round
/// no place clockwise, but for slivers as narrow as rounding makes them.
///
/// Spikes, where the line goes back along itself, are left out. Points that rounding puts on each other or on
/// a side are moved apart first, by no more than `nudge_mm`.
///
/// Empty if no round of so many gave a line that does not cross itself.
std::optional<SidedLine> outer_line(SidedLine line, std::size_t rounds = most_clean_up_rounds);

/// Whether the line goes along itself and straight back somewhere, to `nudge_mm`: rounding may say that it does not
/// cross itself there. O(n).
bool has_spike(const std::vector<Point>& points);

/// The outer line of a cutting line round the piece. Throws NotCleaned if there is none in so many rounds, or
/// one that encloses less than the stitching line; Impossible if that crosses itself.
SidedLine cleaned(const Piece& piece, SidedLine line, std::size_t rounds = most_clean_up_rounds);

}  // namespace dartwright::cutting
