#pragma once

// Private to the room: what pages show of the big sheet.

#include <vector>

#include "dartwright/pages/print_sheet.hpp"

namespace dartwright {

/// What of a drawing lies in the window or may reach into it, in the same order. Of a line that is not filled
/// only the stretches that do: each begins and ends outside, and a dashed one goes on with its dashes as they
/// come. O(n).
DrawnGroup seen_through(const DrawnGroup& group, const Box& window);

/// The same for the window of each of the tiles, in their order: O(n + what is seen).
std::vector<DrawnGroup> seen_on_tiles(const DrawnGroup& group, const TileGrid& grid,
                                      const std::vector<Tile>& tiles);

/// What each tile of the sheet shows of the pieces of which the boxes reach into its window, in their order.
std::vector<std::vector<DrawnGroup>> pieces_seen(const PrintSheet& sheet);

/// Whether two boxes have an area in common.
bool is_meeting(const Box& a, const Box& b);
Box grown(const Box& box, double by_mm);
/// Holds the curve: it lies among its controls.
Box box_around(const Curve& curve);

}  // namespace dartwright
