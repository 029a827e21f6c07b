#pragma once

#include <optional>
#include <vector>

#include "dartwright/pages/tile_grid.hpp"

namespace dartwright {

struct Extent {
    double width_mm = 0;
    double height_mm = 0;
};

struct PackRequest {
    std::vector<Extent> sizes;  ///< boxes, placed in this order
    double width_mm = 0;        ///< of the sheet; it is as long as needed
    double gap_mm = 0;          ///< kept between two boxes
    std::optional<TileGrid>
        grid;  ///< each box goes where it opens the fewest new pages of it; its rows are not read
    bool is_undivided = false;  ///< of places that open as many, one that reaches into the fewest
};

/// The upper left corner of each box on the sheet, whose upper left corner is the origin (y up). A box is
/// tried at the sheet's edges, beside and below every box before it and at the edges of windows; it goes
/// where it opens the fewest new pages, then where the sheet stays shortest, then highest, then furthest
/// left. Precondition: no box is wider than the sheet (std::invalid_argument). O(n^3), and n^4 at worst: a
/// second or two for a hundred.
std::vector<Point> packed(const PackRequest& request);

}  // namespace dartwright
