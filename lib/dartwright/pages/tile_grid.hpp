#pragma once

#include <string>
#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// The big sheet as pages laid over one another. A page shows a window; two neighbours have a strip of it,
/// the overlap, in common, and are matched on the line in its middle. Between those lines lie the cells,
/// which divide the sheet. Rows are counted from the top, the origin is the sheet's upper left corner, y
/// points up (so that the sheet lies below 0).
struct TileGrid {
    double window_width_mm = 0;
    double window_height_mm = 0;
    double overlap_mm = 0;
    std::size_t columns = 1;
    std::size_t rows = 1;
};

struct Tile {
    std::size_t row = 0;
    std::size_t column = 0;
    friend bool operator==(const Tile&, const Tile&) = default;
};

/// What a page shows of the sheet.
Box window_of(const TileGrid& grid, Tile tile);
/// The part of the window that is the tile's own, between the matching lines; to the window's end where the
/// grid ends.
Box cell_of(const TileGrid& grid, Tile tile);
/// How wide a sheet of so many columns is.
double sheet_width(const TileGrid& grid);
/// How many rows a sheet of that height needs.
std::size_t rows_for(const TileGrid& grid, double height_mm);
/// A letter for the row, from the top, and a number for the column: `A1`, `B3`, after `Z1` `AA1`.
std::string label_of(Tile tile);

}  // namespace dartwright
