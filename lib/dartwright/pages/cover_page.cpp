#include "dartwright/pages/cover_page.hpp"

#include <algorithm>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/pages/test_squares.hpp"
#include "dartwright/words/clean_text.hpp"

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

Box upright_box_of(const DrawnText& text) {
    return upright_box(box_of(text));
}

bool is_overlapping(const Box& a, const Box& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// A piece's name in its middle, or as near above or below it as no other words of the map are.
void add_name_on_map(DrawnGroup& group, const SheetPiece& piece, const MapScale& map) {
    if (piece.cutting_line.empty()) return;
    constexpr double name_size_mm = 3.2;
    constexpr double longest_name_mm = 45;
    DrawnText name = words_on_map(shortened(piece.name, name_size_mm, longest_name_mm, true),
                                  on_map(middle(piece.box.low, piece.box.high), map), name_size_mm);
    name.is_bold = true;
    const auto is_clear = [&](const DrawnText& text) {
        return std::none_of(group.items.begin(), group.items.end(), [&](const DrawnItem& item) {
            const DrawnText* other = std::get_if<DrawnText>(&item);
            return other && is_overlapping(upright_box_of(*other), upright_box_of(text));
        });
    };
    const Point middle_of_piece = name.at;
    for (const double step : {0.0, -1.0, 1.0, -2.0, 2.0, -3.0, 3.0}) {
        name.at = middle_of_piece + Vector{0, step * name_size_mm};
        if (is_clear(name)) break;
    }
    group.items.push_back(name);
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
    for (const SheetPiece& piece : sheet.pieces) add_name_on_map(group, piece, map);
    column.top -= map.scale * depth + 5;
    return group;
}

std::string pages_of(const SheetPiece& piece) {
    std::string words;
    for (const Tile tile : piece.tiles) words += (words.empty() ? "" : ", ") + label_of(tile);
    return words;
}

void add_contents(DrawnGroup& group, TextColumn& column, const PrintSheet& sheet) {
    add_paragraph(group, column, "On these pages", {4, true, 1.2});
    // More names than this would push the rest off the page.
    constexpr std::size_t most_names = 14;
    constexpr double size = 3.4;
    std::vector<std::string> names;
    std::size_t lines = 0;
    for (std::size_t i = 0; i < sheet.pieces.size() && i < most_names; ++i) {
        names.push_back(clean_text(sheet.pieces[i].name) + ": " + pages_of(sheet.pieces[i]));
        lines += wrapped(names.back(), size, column.width).size();
    }
    for (const std::string& words : names)
        add_paragraph(group, column, lines > most_names ? shortened(words, size, column.width) : words,
                      {size, false, 0.4});
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
    add_paragraph(group, column, shortened(page.title, title_size_mm, column.width, true),
                  {title_size_mm, true, 0});
    const bool is_one = sheet.tiles.size() == 1;
    std::string line = std::to_string(sheet.tiles.size()) + " " + page.paper + (is_one ? " page" : " pages") +
                       " at full scale " + (is_one ? "follows" : "follow");
    if (!page.date.empty()) line += "  \xC2\xB7  " + page.date;
    add_paragraph(group, column, shortened(line, 3.6, column.width), {3.6, false, 1});
    add_paragraph(group, column, caution_words(), {3.7, true, 2.5});
}

/// What is gathered, eased or tucked, by piece, as far as there is room above the foot; the pieces have it
/// all.
void add_taken_in(DrawnGroup& group, TextColumn& column, const PrintSheet& sheet, double foot) {
    std::vector<std::string> lines;
    for (const SheetPiece& piece : sheet.pieces)
        for (const std::string& words : piece.taken_in) lines.push_back(piece.name + ", " + words);
    constexpr double size = 3.4;
    constexpr double line_step = look::line_step_em * size;
    const auto height_of = [&](const std::string& words) {
        return static_cast<double>(wrapped(words, size, column.width).size()) * line_step + 0.4;
    };
    constexpr double heading_height = 3 + look::line_step_em * 4 + 1.2;
    if (lines.empty() || column.top - heading_height - height_of(lines.front()) - line_step < foot) return;
    column.top -= 3;
    add_paragraph(group, column, "Gathers, ease and tucks", {4, true, 1.2});
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const bool is_last = i + 1 == lines.size();
        if (column.top - height_of(lines[i]) - (is_last ? 0 : line_step) < foot) {
            const std::string rest = std::to_string(lines.size() - i) + " more, on the pieces";
            return add_paragraph(group, column, "and " + rest, {size, false, 0});
        }
        add_paragraph(group, column, lines[i], {size, false, 0.4});
    }
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
    add_taken_in(words, column, sheet, page.margin_mm);
    drawing.groups.push_back(words);
    return drawing;
}

}  // namespace dartwright
