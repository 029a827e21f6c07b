#pragma once

#include "dartwright/pages/print_sheet.hpp"

namespace dartwright {

/// The strip below the window in which a page says what it is.
inline constexpr double page_strip_mm = 7;

struct TilePage {
    Tile tile;
    double width_mm = 0;  ///< of the paper
    double height_mm = 0;
    double margin_mm = 0;
    std::string title;
    std::string date;
    std::size_t number = 1;  ///< of the page, from 1
    std::size_t pages = 1;
    std::vector<DrawnGroup> seen;  ///< what its window shows of the pieces
};

/// One page of the sheet at true size: its window of the pieces, the matching lines towards the pages beside
/// it with rings and their labels, trim marks at the corners of its cell, and what it is in the strip below.
Drawing tile_page(const PrintSheet& sheet, const TilePage& page);

/// The names of the pieces that the tile shows.
std::string piece_names_on(const PrintSheet& sheet, Tile tile);

}  // namespace dartwright
