#pragma once

// Private to the room: where the clean-up took something away.

#include "dartwright/cutting/sided_line.hpp"

namespace dartwright::cutting {

/// What of a line was taken from it by the clean-up, by place: stretches of runs in outline order, then
/// darts. `cleaned` is what the clean-up made of `raw`, each side's item being the index of the side of `raw`
/// along which it goes. Stretches nearer to each other than `one_place_mm` are one place. Less than `seen_mm`
/// of the line is no place: nobody sees it. O(n log n), and the search of the nearest point of an edge for
/// each side that was taken from.
std::vector<TrimmedPlace> trimmed_places(const Piece& piece, const SidedLine& raw, const SidedLine& cleaned);

inline constexpr double one_place_mm = 1;
inline constexpr double seen_mm = 0.5;

}  // namespace dartwright::cutting
