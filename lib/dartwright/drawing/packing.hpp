#pragma once

#include <optional>
#include <vector>

#include "dartwright/drawing/tile_grid.hpp"

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
};

/// The upper left corner of each box on the sheet, whose upper left corner is the origin (y up). A box is
/// tried at the sheet's edges, beside and below every box before it and at the edges of windows; it goes
/// where it opens the fewest new pages, then where the sheet stays shortest, then highest, then furthest
/// left. Precondition: no box is wider than the sheet (std::invalid_argument). O(n^4), meant for tens of
/// pieces.
std::vector<Point> packed(const PackRequest& request);

}  // namespace dartwright
