#pragma once

#include <functional>
#include <string>
#include <vector>

#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pages/tile_grid.hpp"

namespace dartwright {

/// One piece as it is to be printed, in its own coordinates.
struct PrintedPiece {
    std::string name;
    DrawnGroup drawing;
    std::vector<Point> cutting_line;      ///< a closed polygon
    double grain_rad = 0;                 ///< direction of the grain, which is to stand upright
    std::vector<std::string> notes = {};  ///< what is to be said of its cutting
    /// The same drawing with its words clear of these lines, where there is room; none if it has no words.
    std::function<DrawnGroup(const std::vector<Line>& joints)> drawn_off = {};
    std::vector<std::string> taken_in = {};  ///< gathers, ease and tucks, in words
};

/// A piece on the big sheet (its upper left corner is the origin, y up).
struct SheetPiece {
    std::string name;
    DrawnGroup drawing;
    std::vector<Point> cutting_line;  ///< empty for what is no piece
    Box box;                          ///< of all that is drawn
    std::vector<Tile> tiles;          ///< the pages whose cells show some of it, row by row
    Motion motion = {};               ///< from the piece's own coordinates
    std::vector<std::string> taken_in = {};
};

struct PrintSheet {
    TileGrid grid;
    std::vector<SheetPiece> pieces;  ///< in the order they were given
    std::vector<Tile> tiles;         ///< the cells that hold something, row by row
};

struct GridRequest {
    TileGrid grid;  ///< windows and overlap; rows and columns are chosen
    double gap_mm = 5;
};

/// The piece turned so that its grain points up.
SheetPiece upright(const PrintedPiece& piece);

/// All pieces on one sheet of windows: every width up to that of the pieces in one row is tried, with the
/// pieces in the order of their area, height and width; that with the fewest pages is taken, of several the
/// one that divides the fewest pieces, and of those the one with the fewest columns. O(columns n^3), and n^4
/// at worst.
PrintSheet tiled_sheet(const std::vector<SheetPiece>& pieces, const GridRequest& request);

/// The sheet with the words of its pieces off the joints of its pages, as far as there is room for them.
/// `pieces` are those of the sheet, in its order; the sheet may hold more.
PrintSheet with_words_off_joints(PrintSheet sheet, const std::vector<PrintedPiece>& pieces);

/// All pieces on one page as wide as the window, and as long as they need: the window's height is chosen.
/// Precondition: no piece is wider (std::invalid_argument).
PrintSheet single_sheet(const std::vector<SheetPiece>& pieces, const GridRequest& request);

}  // namespace dartwright
