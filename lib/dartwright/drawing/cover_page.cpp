#include "dartwright/drawing/cover_page.hpp"

#include <algorithm>

#include "dartwright/drawing/decimals.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/test_squares.hpp"
#include "dartwright/drawing/text_column.hpp"

namespace dartwright {

namespace {

constexpr double title_size_mm = 8;
constexpr double map_line_mm = 0.25;
constexpr double highest_map_mm = 92;

/// From the sheet to the map.
struct MapScale {
    Point corner;  ///< of the map: its upper left
    double scale = 1;
};
Point on_map(Point p, const MapScale& map) {
    return map.corner + map.scale * (p - Point{});
}

DrawnPath map_polygon(const std::vector<Point>& points, const MapScale& map, const Stroke& stroke) {
    std::vector<Point> there;
    for (const Point p : points) there.push_back(on_map(p, map));
    DrawnPath path = polyline(there, stroke);
    path.is_closed = true;
    return path;
}

DrawnPath cell_on_map(const Box& cell, const MapScale& map) {
    DrawnPath path = map_polygon({cell.low, {cell.high.x, cell.low.y}, cell.high, {cell.low.x, cell.high.y}},
                                 map, look::solid(look::pencil, map_line_mm));
    path.curves.push_back(Line{end_of(path.curves.back()), start_of(path.curves.front())});
    return path;
}

DrawnText words_on_map(const std::string& words, Point at, double size_mm) {
    DrawnText text;
    text.words = words;
    text.size_mm = size_mm;
    text.anchor = Anchor::middle;
    text.at = at - Vector{0, size_mm / 3};
    text.colour = look::ink;
    text.halo = Colour{255, 255, 255};
    return text;
}

/// The map, as wide as the column or as high as it may be; the column's top moves below it.
DrawnGroup page_map(const PrintSheet& sheet, TextColumn& column) {
    const TileGrid& grid = sheet.grid;
    const double depth = -cell_of(grid, {grid.rows - 1, 0}).low.y;
    const MapScale map{{column.left, column.top},
                       std::min(column.width / sheet_width(grid), highest_map_mm / depth)};
    DrawnGroup group{"page map", {}, {}};
    for (const Tile tile : sheet.tiles) group.items.push_back(cell_on_map(cell_of(grid, tile), map));
    for (const SheetPiece& piece : sheet.pieces)
        group.items.push_back(map_polygon(piece.cutting_line, map, look::solid(look::ink, 2 * map_line_mm)));
    const double cell_width = map.scale * (grid.window_width_mm - grid.overlap_mm);
    const double size = std::clamp(0.28 * cell_width, 1.8, 4.0);
    for (const Tile tile : sheet.tiles) {
        const Box cell = cell_of(grid, tile);
        group.items.push_back(words_on_map(label_of(tile), on_map(middle(cell.low, cell.high), map), size));
    }
    column.top -= map.scale * depth + 5;
    return group;
}

std::string pages_of(const SheetPiece& piece) {
    std::string words;
    for (const Tile tile : piece.tiles) words += (words.empty() ? "" : ", ") + label_of(tile);
    return words;
}

std::string number_words(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

void add_contents(DrawnGroup& group, TextColumn& column, const PrintSheet& sheet) {
    add_paragraph(group, column, "On these pages", {4, true, 1.2});
    // More names than this would push the rest off the page.
    constexpr std::size_t most_names = 14;
    for (std::size_t i = 0; i < sheet.pieces.size() && i < most_names; ++i) {
        const std::string words = sheet.pieces[i].name + ": " + pages_of(sheet.pieces[i]);
        add_paragraph(group, column, shortened(words, 3.4, column.width), {3.4, false, 0.4});
    }
    if (sheet.pieces.size() > most_names)
        add_paragraph(group, column, "and " + std::to_string(sheet.pieces.size() - most_names) + " more");
    column.top -= 3;
}

void add_steps(DrawnGroup& group, TextColumn& column) {
    add_paragraph(group, column, "Putting the pages together", {4, true, 1.2});
    for (const char* step : {"1. Measure the squares on this page.",
                             "2. On each page cut away the left and the lower strip along the thin grey "
                             "line, where there is one.",
                             "3. Lay the page on its neighbours so that lines and rings fall on one another; "
                             "tape it, row by row.",
                             "4. Check a long straight line with a ruler before you cut out."})
        add_paragraph(group, column, step, {3.4, false, 1});
}

void add_heading(DrawnGroup& group, TextColumn& column, const PrintSheet& sheet, const CoverPage& page) {
    add_paragraph(group, column, shortened(page.title, title_size_mm, column.width),
                  {title_size_mm, true, 0});
    std::string line = "full scale on " + number_words(sheet.tiles.size(), "page ", "pages ") + page.paper +
                       ", after this one";
    if (!page.date.empty()) line += "  \xC2\xB7  " + page.date;
    add_paragraph(group, column, shortened(line, 3.6, column.width), {3.6, false, 3});
}

}  // namespace

Drawing cover_page(const PrintSheet& sheet, const CoverPage& page) {
    Drawing drawing;
    drawing.width_mm = page.width_mm;
    drawing.height_mm = page.height_mm;
    drawing.title = page.title;
    DrawnGroup words{"words", {}, {}};
    TextColumn all{page.margin_mm, page.height_mm - page.margin_mm, page.width_mm - 2 * page.margin_mm};
    add_heading(words, all, sheet, page);
    const double left = page.margin_mm + 0.5;
    const Point upper{left, all.top - metric_square_mm - 0.5};
    drawing.groups = {metric_square(upper), inch_square(upper - Vector{0, square_gap_mm + inch_square_mm})};
    const double beside = left + inch_square_mm + square_gap_mm;
    TextColumn column{beside, all.top, page.width_mm - page.margin_mm - beside};
    drawing.groups.push_back(page_map(sheet, column));
    add_contents(words, column, sheet);
    add_steps(words, column);
    TextColumn below{page.margin_mm, upper.y - square_gap_mm - inch_square_mm - 5, all.width};
    add_paragraph(words, below, caution_words(), {3.6, false, 0});
    drawing.groups.push_back(words);
    return drawing;
}

}  // namespace dartwright
