#include "dartwright/pages/tile_grid.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/accuracy.hpp"

namespace dartwright {

namespace {

struct Step {
    double x;
    double y;
};
Step step_of(const TileGrid& grid) {
    return {grid.window_width_mm - grid.overlap_mm, grid.window_height_mm - grid.overlap_mm};
}

}  // namespace

Box window_of(const TileGrid& grid, Tile tile) {
    const Step step = step_of(grid);
    const double left = static_cast<double>(tile.column) * step.x;
    const double top = -static_cast<double>(tile.row) * step.y;
    return {{left, top - grid.window_height_mm}, {left + grid.window_width_mm, top}};
}

Box cell_of(const TileGrid& grid, Tile tile) {
    Box cell = window_of(grid, tile);
    const double half = grid.overlap_mm / 2;
    if (tile.column > 0) cell.low.x += half;
    if (tile.column + 1 < grid.columns) cell.high.x -= half;
    if (tile.row > 0) cell.high.y -= half;
    if (tile.row + 1 < grid.rows) cell.low.y += half;
    return cell;
}

double sheet_width(const TileGrid& grid) {
    return static_cast<double>(grid.columns) * step_of(grid).x + grid.overlap_mm;
}

std::size_t rows_for(const TileGrid& grid, double height_mm) {
    // A sheet that ends on a row's end to rounding needs no row more.
    const double rows = std::ceil((height_mm - grid.overlap_mm - sum_rounding_mm) / step_of(grid).y);
    return static_cast<std::size_t>(std::max(1.0, rows));
}

std::string label_of(Tile tile) {
    std::string letters;
    for (std::size_t row = tile.row + 1; row > 0; row = (row - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (row - 1) % 26));
    return letters + std::to_string(tile.column + 1);
}

}  // namespace dartwright
