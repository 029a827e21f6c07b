#include "dartwright/pages/tile_page.hpp"

#include <algorithm>
#include <array>

#include "dartwright/drawing/label_places.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/pages/seen_parts.hpp"

namespace dartwright {

namespace {

constexpr Colour pale{228, 228, 228};
constexpr Colour matching{120, 120, 120};
constexpr double matching_width_mm = 0.2;
constexpr double ring_radius_mm = 2;
constexpr double ring_tick_mm = 4;
constexpr std::array<double, 2> ring_shares{0.25, 0.75};  // of a side
constexpr double corner_mark_mm = 5;
constexpr double join_size_mm = 3.4;
constexpr double join_label_gap_mm = 1;
constexpr double pale_size_mm = 26;
constexpr double strip_size_mm = 3;

bool is_printed(const PrintSheet& sheet, Tile tile) {
    return std::find(sheet.tiles.begin(), sheet.tiles.end(), tile) != sheet.tiles.end();
}

/// One side of a cell: walked anticlockwise, so that the cell lies on its left.
struct CellSide {
    Point from;
    Point to;
    std::optional<Tile> beside;  ///< the page that is joined there
};

std::vector<CellSide> sides_of(const PrintSheet& sheet, Tile tile) {
    const Box cell = cell_of(sheet.grid, tile);
    const Point low_right{cell.high.x, cell.low.y};
    const Point high_left{cell.low.x, cell.high.y};
    // A step below row or column 0 wraps to a number that no grid has.
    std::vector<CellSide> sides{{cell.low, low_right, Tile{tile.row + 1, tile.column}},
                                {low_right, cell.high, Tile{tile.row, tile.column + 1}},
                                {cell.high, high_left, Tile{tile.row - 1, tile.column}},
                                {high_left, cell.low, Tile{tile.row, tile.column - 1}}};
    for (CellSide& side : sides)
        if (!is_printed(sheet, *side.beside)) side.beside.reset();
    return sides;
}

DrawnGroup pale_label(const PrintSheet& sheet, Tile tile) {
    const Box cell = cell_of(sheet.grid, tile);
    DrawnText label;
    label.words = label_of(tile);
    label.size_mm = pale_size_mm;
    label.is_bold = true;
    label.anchor = Anchor::middle;
    label.colour = pale;
    label.at = middle(cell.low, cell.high) - Vector{0, pale_size_mm / 3};
    return {"label", {label}, {}};
}

/// What of the items lies in the strip in which a side's label may stand.
void take_in_strip(TakenPlaces& taken, const DrawnGroup& group, const Box& strip) {
    for (const DrawnItem& item : group.items) {
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) {
            if (is_meeting(upright_box(box_of(*text)), strip)) taken.add(box_of(*text));
            continue;
        }
        for (const Curve& curve : std::get<DrawnPath>(item).curves) {
            if (!is_meeting(grown(box_around(curve), matching_width_mm), strip)) continue;
            DrawnPath part;
            part.curves = {curve};
            taken.add(part);
        }
    }
    for (const DrawnGroup& inner : group.groups) take_in_strip(taken, inner, strip);
}

TakenPlaces places_along(const CellSide& side, const DrawnGroup& seen) {
    constexpr double reach = 20;  // farther in no label is put
    const Box line{{std::min(side.from.x, side.to.x), std::min(side.from.y, side.to.y)},
                   {std::max(side.from.x, side.to.x), std::max(side.from.y, side.to.y)}};
    TakenPlaces taken;
    take_in_strip(taken, seen, grown(line, reach));
    for (const double share : ring_shares) {
        TurnedBox ring;
        ring.centre = between(side.from, side.to, share);
        ring.half_length = ring.half_height = ring_tick_mm;
        taken.add(ring);
    }
    return taken;
}

void add_ring(DrawnGroup& group, Point at, Vector across) {
    DrawnPath ring = circle(at, ring_radius_mm);
    ring.stroke = look::solid(matching, matching_width_mm);
    group.items.push_back(ring);
    group.items.push_back(polyline({at - ring_tick_mm * across, at + ring_tick_mm * across}, *ring.stroke));
}

constexpr double join_clear_mm = 1.4;

/// Where a page's name stands: its middle at a share of the side, and so far inside from it.
struct JoinPlace {
    double share = 0.5;
    double clear_mm = join_clear_mm;
};
DrawnText join_label(const CellSide& side, JoinPlace place) {
    const Vector along = unit(side.to - side.from);
    const Vector inwards = perpendicular(along);
    DrawnText label;
    label.words = "to " + label_of(*side.beside);
    label.size_mm = join_size_mm;
    label.anchor = Anchor::middle;
    label.colour = matching;
    label.halo = Colour{255, 255, 255};
    // The words stand upright on the upper and lower side, and read from the right on the others.
    const bool is_level = std::abs(along.x) > 0.5;
    label.angle_rad = is_level ? 0 : pi / 2;
    const bool is_above_line = is_level ? inwards.y > 0 : inwards.x < 0;
    const double off = place.clear_mm + (is_above_line ? text_descent_em : text_ascent_em) * join_size_mm;
    label.at = between(side.from, side.to, place.share) + off * inwards;
    return label;
}

/// In the middle of the side, or as near to it as the label covers nothing that is to be cut or read; where a
/// line runs beside the whole side, somewhat farther in. In the middle if there is no such place.
DrawnText clear_join_label(const CellSide& side, const DrawnGroup& seen) {
    const TakenPlaces taken = places_along(side, seen);
    for (const double clear_mm : {join_clear_mm, join_clear_mm + 4, join_clear_mm + 8}) {
        for (const double share :
             {0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.25, 0.75, 0.18, 0.82, 0.12, 0.88, 0.06, 0.94}) {
            DrawnText label = join_label(side, {share, clear_mm});
            if (taken.is_clear({label}, join_label_gap_mm)) return label;
        }
    }
    return join_label(side, {});
}

void add_join(DrawnGroup& group, const CellSide& side, double overlap_mm, const DrawnGroup& seen) {
    const Vector inwards = perpendicular(unit(side.to - side.from));
    group.items.push_back(polyline({side.from, side.to}, look::solid(matching, matching_width_mm)));
    if (overlap_mm >= 2 * ring_tick_mm)
        for (const double share : ring_shares) add_ring(group, between(side.from, side.to, share), inwards);
    group.items.push_back(clear_join_label(side, seen));
}

DrawnGroup matching_layer(const PrintSheet& sheet, Tile tile, const DrawnGroup& seen) {
    DrawnGroup group{"matching lines", {}, {}};
    const Stroke mark = look::solid(look::ink, matching_width_mm);
    for (const CellSide& side : sides_of(sheet, tile)) {
        if (side.beside) add_join(group, side, sheet.grid.overlap_mm, seen);
        const Vector along = unit(side.to - side.from);
        const Vector across = perpendicular(along);
        group.items.push_back(
            polyline({side.from - corner_mark_mm * along, side.from + corner_mark_mm * along}, mark));
        group.items.push_back(
            polyline({side.from - corner_mark_mm * across, side.from + corner_mark_mm * across}, mark));
    }
    return group;
}

/// All that the window shows, on the page.
DrawnGroup window_layer(const PrintSheet& sheet, const TilePage& page) {
    const Box window = window_of(sheet.grid, page.tile);
    DrawnGroup shown{"window", {}, {}};
    const bool is_one_sheet = sheet.tiles.size() == 1;
    if (!is_one_sheet) shown.groups.push_back(pale_label(sheet, page.tile));
    DrawnGroup seen;
    seen.groups = page.seen;
    for (const DrawnGroup& piece : seen.groups) shown.groups.push_back(piece);
    if (!is_one_sheet) shown.groups.push_back(matching_layer(sheet, page.tile, seen));
    const Point corner{page.margin_mm, page.margin_mm + page_strip_mm};
    DrawnGroup moved_there = moved(shown, corner - window.low);
    moved_there.clip = Box{corner, corner + (window.high - window.low)};
    return moved_there;
}

DrawnGroup strip_layer(const PrintSheet& sheet, const TilePage& page) {
    const std::string dot = "  \xC2\xB7  ";
    std::string what = "page " + std::to_string(page.number) + " of " + std::to_string(page.pages) + dot;
    if (sheet.tiles.size() > 1) what = label_of(page.tile) + dot + what;
    what += page.title;
    const std::string pieces = piece_names_on(sheet, page.tile);
    if (!pieces.empty()) what += dot + pieces;
    if (!page.date.empty()) what += dot + page.date;
    DrawnText text;
    text.size_mm = strip_size_mm;
    text.words = shortened(what, text.size_mm, page.width_mm - 2 * page.margin_mm);
    text.at = {page.margin_mm, page.margin_mm + 1.5};
    text.colour = look::ink;
    return {"page", {text}, {}};
}

}  // namespace

std::string piece_names_on(const PrintSheet& sheet, Tile tile) {
    std::string names;
    for (const SheetPiece& piece : sheet.pieces) {
        const bool is_on = std::find(piece.tiles.begin(), piece.tiles.end(), tile) != piece.tiles.end();
        if (is_on && !piece.cutting_line.empty()) names += (names.empty() ? "" : ", ") + piece.name;
    }
    return names;
}

Drawing tile_page(const PrintSheet& sheet, const TilePage& page) {
    Drawing drawing;
    drawing.width_mm = page.width_mm;
    drawing.height_mm = page.height_mm;
    drawing.title = page.title;
    drawing.groups = {window_layer(sheet, page), strip_layer(sheet, page)};
    return drawing;
}

}  // namespace dartwright
