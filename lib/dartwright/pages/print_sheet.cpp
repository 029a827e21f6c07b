#include "dartwright/pages/print_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/polygon_index.hpp"
#include "dartwright/pages/packing.hpp"

namespace dartwright {

namespace {

/// Half the width of the widest line, so that none is cut off at the sheet's edge.
constexpr double line_room_mm = 1;

Extent extent_of(const SheetPiece& piece) {
    return {piece.box.high.x - piece.box.low.x, piece.box.high.y - piece.box.low.y};
}

/// How much of the stretch from a to b lies in the box, by the Liang-Barsky way: more than a point?
bool is_reaching_into(const Box& box, Point a, Point b) {
    double from = 0;
    double to = 1;
    const auto keep = [&](double start, double step, double low, double high) {
        if (step == 0) return start > low && start < high;
        const double first = (low - start) / step;
        const double second = (high - start) / step;
        from = std::max(from, std::min(first, second));
        to = std::min(to, std::max(first, second));
        return from < to;
    };
    return keep(a.x, b.x - a.x, box.low.x, box.high.x) && keep(a.y, b.y - a.y, box.low.y, box.high.y);
}

struct Stretch {
    Point from;
    Point to;
};

void add_stretches(const DrawnItem& item, std::vector<Stretch>& found) {
    std::vector<Point> points;
    if (const DrawnText* text = std::get_if<DrawnText>(&item)) {
        const Box box = upright_box(box_of(*text));
        points = {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}, box.low};
    } else {
        const DrawnPath& path = std::get<DrawnPath>(item);
        for (const Curve& curve : path.curves) {
            if (points.empty()) points.push_back(start_of(curve));
            flatten_onto(points, curve, picture_chord_error_mm);
        }
        if (path.is_closed) points.push_back(points.front());
    }
    for (std::size_t i = 1; i < points.size(); ++i) found.push_back({points[i - 1], points[i]});
}

void add_stretches(const DrawnGroup& group, std::vector<Stretch>& found) {
    for (const DrawnItem& item : group.items) add_stretches(item, found);
    for (const DrawnGroup& inner : group.groups) add_stretches(inner, found);
}

bool is_touching(const Box& a, const Box& b) {
    return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y;
}

/// A place that touches the border of a cell does not reach into it, however its last bit went.
Box within_borders(const Box& cell) {
    const Vector in{choice_mm, choice_mm};
    return {cell.low + in, cell.high - in};
}

/// Columns or rows of cells, by where they begin and end, in growing order.
struct Strips {
    std::vector<double> low;
    std::vector<double> high;

    /// Those that something from one place to another may reach into.
    std::pair<std::size_t, std::size_t> under(double from, double to) const {
        const auto first = std::upper_bound(high.begin(), high.end(), from) - high.begin();
        const auto last = std::lower_bound(low.begin(), low.end(), to) - low.begin();
        return {static_cast<std::size_t>(first), static_cast<std::size_t>(std::max(first, last))};
    }
};

/// The cells of a grid by column and by row; what is asked of a cell is worked out once for its strip.
class SheetCells {
  public:
    explicit SheetCells(const TileGrid& grid) : grid_(grid), is_drawn_on_(grid.rows * grid.columns, false) {
        for (std::size_t column = 0; column < grid.columns; ++column) {
            const Box cell = cell_at({0, column});
            columns_.low.push_back(cell.low.x);
            columns_.high.push_back(cell.high.x);
        }
        // From the lowest row up.
        for (std::size_t row = grid.rows; row-- > 0;) {
            const Box cell = cell_at({row, 0});
            rows_.low.push_back(cell.low.y);
            rows_.high.push_back(cell.high.y);
        }
    }

    Box cell_at(Tile tile) const { return within_borders(cell_of(grid_, tile)); }
    bool is_drawn_on(Tile tile) const { return is_drawn_on_[tile.row * grid_.columns + tile.column]; }

    void draw_on(const Stretch& s) {
        const auto [left, right] = columns_.under(std::min(s.from.x, s.to.x), std::max(s.from.x, s.to.x));
        const auto [low, high] = rows_.under(std::min(s.from.y, s.to.y), std::max(s.from.y, s.to.y));
        for (std::size_t up = low; up < high; ++up) {
            const std::size_t row = grid_.rows - 1 - up;
            for (std::size_t column = left; column < right; ++column) {
                const std::size_t at = row * grid_.columns + column;
                if (!is_drawn_on_[at] && is_reaching_into(cell_at({row, column}), s.from, s.to))
                    is_drawn_on_[at] = true;
            }
        }
    }

  private:
    const TileGrid& grid_;
    Strips columns_;
    Strips rows_;
    std::vector<bool> is_drawn_on_;
};

/// The cells that any line, words or the cloth of the piece reach into.
std::vector<Tile> tiles_under(const SheetPiece& piece, const TileGrid& grid) {
    std::vector<Stretch> stretches;
    add_stretches(piece.drawing, stretches);
    SheetCells cells(grid);
    for (const Stretch& stretch : stretches) cells.draw_on(stretch);
    const PolygonIndex cloth(piece.cutting_line);
    std::vector<Tile> tiles;
    for (std::size_t row = 0; row < grid.rows; ++row) {
        for (std::size_t column = 0; column < grid.columns; ++column) {
            const Tile tile{row, column};
            const Box cell = cells.cell_at(tile);
            if (!is_touching(cell, piece.box)) continue;
            const bool is_inside = cloth.where(middle(cell.low, cell.high)) == Where::inside;
            if (cells.is_drawn_on(tile) || is_inside) tiles.push_back(tile);
        }
    }
    return tiles;
}

SheetPiece moved_piece(const SheetPiece& piece, Vector shift) {
    SheetPiece result = piece;
    result.drawing = moved(piece.drawing, shift);
    for (Point& p : result.cutting_line) p = p + shift;
    result.box = {piece.box.low + shift, piece.box.high + shift};
    result.motion = then(piece.motion, shift_by(shift));
    return result;
}

/// The pieces at their places, without tiles. `order` says which is placed first.
std::vector<SheetPiece> placed(const std::vector<SheetPiece>& pieces, const std::vector<std::size_t>& order,
                               PackRequest request) {
    for (const std::size_t i : order) request.sizes.push_back(extent_of(pieces[i]));
    const std::vector<Point> corners = packed(request);
    std::vector<SheetPiece> result(pieces.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        const SheetPiece& piece = pieces[order[i]];
        result[order[i]] = moved_piece(piece, corners[i] - Point{piece.box.low.x, piece.box.high.y});
    }
    return result;
}

double depth_of(const std::vector<SheetPiece>& pieces) {
    double lowest = 0;
    for (const SheetPiece& piece : pieces) lowest = std::min(lowest, piece.box.low.y);
    return -lowest;
}

PrintSheet sheet_of(std::vector<SheetPiece> pieces, TileGrid grid) {
    grid.rows = rows_for(grid, depth_of(pieces));
    PrintSheet sheet{grid, std::move(pieces), {}};
    for (SheetPiece& piece : sheet.pieces) {
        piece.tiles = tiles_under(piece, grid);
        sheet.tiles.insert(sheet.tiles.end(), piece.tiles.begin(), piece.tiles.end());
    }
    std::sort(sheet.tiles.begin(), sheet.tiles.end(),
              [](Tile a, Tile b) { return a.row != b.row ? a.row < b.row : a.column < b.column; });
    sheet.tiles.erase(std::unique(sheet.tiles.begin(), sheet.tiles.end()), sheet.tiles.end());
    return sheet;
}

bool is_within(const Box& inner, const Box& outer) {
    return inner.low.x >= outer.low.x - choice_mm && inner.low.y >= outer.low.y - choice_mm &&
           inner.high.x <= outer.high.x + choice_mm && inner.high.y <= outer.high.y + choice_mm;
}

/// The joints that go through the piece, in its own coordinates.
std::vector<Line> joints_on(const SheetPiece& piece, const TileGrid& grid) {
    const Motion back = inverse(piece.motion);
    const Box box = within_borders(piece.box);
    std::vector<Line> joints;
    const auto add = [&](Point a, Point b) { joints.push_back({apply(back, a), apply(back, b)}); };
    for (std::size_t column = 0; column + 1 < grid.columns; ++column) {
        const double x = cell_of(grid, {0, column}).high.x;
        if (x > box.low.x && x < box.high.x) add({x, box.low.y}, {x, box.high.y});
    }
    for (std::size_t row = 0; row + 1 < grid.rows; ++row) {
        const double y = cell_of(grid, {row, 0}).low.y;
        if (y > box.low.y && y < box.high.y) add({box.low.x, y}, {box.high.x, y});
    }
    return joints;
}

/// The pieces' numbers by area, by height and by width, the largest first.
std::vector<std::vector<std::size_t>> orders_of(const std::vector<SheetPiece>& pieces) {
    const auto sorted_by = [&](const auto& size) {
        std::vector<std::size_t> order(pieces.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return in_steps(size(extent_of(pieces[a]))) > in_steps(size(extent_of(pieces[b])));
        });
        return order;
    };
    // An area's last bits are as much more as its sides are longer than a millimetre.
    constexpr double longest_side_mm = 1e4;
    return {sorted_by([](const Extent& e) { return e.width_mm * e.height_mm / longest_side_mm; }),
            sorted_by([](const Extent& e) { return e.height_mm; }),
            sorted_by([](const Extent& e) { return e.width_mm; })};
}

/// The fewest columns that hold the widest piece, and the most that could be of use: all pieces in one row.
struct Columns {
    std::size_t fewest = 1;
    std::size_t most = 1;
};
Columns columns_for(const std::vector<SheetPiece>& pieces, const GridRequest& request) {
    double widest = 0;
    double all = 0;
    for (const SheetPiece& piece : pieces) {
        widest = std::max(widest, extent_of(piece).width_mm);
        all += extent_of(piece).width_mm + request.gap_mm;
    }
    const double step = request.grid.window_width_mm - request.grid.overlap_mm;
    const auto columns = [&](double width) {
        return static_cast<std::size_t>(std::max(1.0, rounded_up((width - request.grid.overlap_mm) / step)));
    };
    // With every piece in columns of its own there is room for each to begin a page. On a sheet wider than
    // this many pages nobody would find his way.
    constexpr std::size_t most_columns = 16;
    const std::size_t useful = std::min(most_columns, columns(all) + pieces.size() - 1);
    return {columns(widest), std::max(columns(widest), useful)};
}

}  // namespace

SheetPiece upright(const PrintedPiece& piece) {
    const Motion turn = turn_about({}, turn_by(pi / 2 - piece.grain_rad));
    // A grain that stands upright already to rounding leaves every number as it is.
    const Motion motion = std::abs(angle(turn)) < upright_rounding_rad ? Motion{} : turn;
    SheetPiece result{piece.name,    carried(piece.drawing, motion), piece.cutting_line, {}, {}, motion,
                      piece.taken_in};
    for (Point& p : result.cutting_line) p = apply(motion, p);
    result.box = bounds(result.drawing).value_or(Box{});
    for (const Point p : result.cutting_line) result.box = joined(result.box, {p, p});
    const Vector room{line_room_mm, line_room_mm};
    result.box = {result.box.low - room, result.box.high + room};
    return result;
}

namespace {
/// Fewer pages; of as many, those on which fewer pieces are divided.
bool is_better(const PrintSheet& a, const PrintSheet& b) {
    if (a.tiles.size() != b.tiles.size()) return a.tiles.size() < b.tiles.size();
    const auto parts = [](const PrintSheet& sheet) {
        std::size_t count = 0;
        for (const SheetPiece& piece : sheet.pieces) count += piece.tiles.size();
        return count;
    };
    return parts(a) < parts(b);
}
}  // namespace

PrintSheet tiled_sheet(const std::vector<SheetPiece>& pieces, const GridRequest& request) {
    const Columns columns = columns_for(pieces, request);
    std::optional<PrintSheet> best;
    for (std::size_t count = columns.fewest; count <= columns.most; ++count) {
        TileGrid grid = request.grid;
        grid.columns = count;
        for (const std::vector<std::size_t>& order : orders_of(pieces)) {
            for (const bool is_undivided : {false, true}) {
                const PackRequest wanted{{}, sheet_width(grid), request.gap_mm, grid, is_undivided};
                PrintSheet sheet = sheet_of(placed(pieces, order, wanted), grid);
                if (!best || is_better(sheet, *best)) best = std::move(sheet);
            }
        }
    }
    return *best;
}

PrintSheet with_words_off_joints(PrintSheet sheet, const std::vector<PrintedPiece>& pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        SheetPiece& piece = sheet.pieces[i];
        const std::vector<Line> joints = joints_on(piece, sheet.grid);
        if (joints.empty() || !pieces[i].drawn_off) continue;
        DrawnGroup drawing = carried(pieces[i].drawn_off(joints), piece.motion);
        const std::optional<Box> box = bounds(drawing);
        if (box && is_within(*box, piece.box)) piece.drawing = std::move(drawing);
    }
    return sheet_of(std::move(sheet.pieces), sheet.grid);
}

PrintSheet single_sheet(const std::vector<SheetPiece>& pieces, const GridRequest& request) {
    std::optional<PrintSheet> best;
    for (const std::vector<std::size_t>& order : orders_of(pieces)) {
        std::vector<SheetPiece> lying =
            placed(pieces, order, {{}, request.grid.window_width_mm, request.gap_mm, {}, false});
        TileGrid grid = request.grid;
        grid.window_height_mm = depth_of(lying);
        if (!best || in_steps(grid.window_height_mm) < in_steps(best->grid.window_height_mm))
            best = sheet_of(std::move(lying), grid);
    }
    return *best;
}

}  // namespace dartwright
