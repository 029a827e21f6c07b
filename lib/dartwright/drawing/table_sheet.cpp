#include "dartwright/drawing/table_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/finding_tags.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/pattern/fullness.hpp"

namespace dartwright {

namespace {

constexpr double bar_length = 100;           // where the legend begins is reckoned from it
constexpr double least_content_width = 260;  // the bar and a legend beside it
constexpr double widest_list = 520;

DrawnText words_at(Point at, double size_mm, const std::string& words) {
    DrawnText text;
    text.words = words;
    text.at = at;
    text.size_mm = size_mm;
    text.colour = look::ink;
    return text;
}

/// A bar of 100 mm chequered by 10 mm, or of 4 in by half an inch; its upper left corner is the origin.
DrawnGroup scale_bar(Unit unit) {
    constexpr double height = 3;
    const bool is_inch = unit == Unit::inch;
    const int parts = is_inch ? 8 : 10;
    const double part = is_inch ? mm_in(Unit::inch) / 2 : 10;
    const double end = parts * part;
    DrawnGroup group{"scale bar", {}, {}};
    for (int i = 0; i < parts; i += 2) {
        const double x = i * part;
        group.items.push_back(polygon({{x, 0}, {x + part, 0}, {x + part, -height}, {x, -height}}, look::ink));
    }
    DrawnPath frame = polyline({{0, 0}, {end, 0}, {end, -height}, {0, -height}, {0, 0}},
                               look::solid(look::ink, look::thin_width));
    frame.is_closed = true;
    group.items.push_back(frame);
    group.items.push_back(
        words_at({0, -height - 1.4 * look::edge_size}, look::edge_size, is_inch ? "4 in" : "100 mm"));
    return group;
}

void add_legend_line(DrawnGroup& group, double y, const Stroke& stroke, const std::string& words) {
    const double rise = look::edge_size * text_ascent_em / 2;
    group.items.push_back(polyline({{bar_length + 20, y + rise}, {bar_length + 50, y + rise}}, stroke));
    group.items.push_back(words_at({bar_length + 55, y}, look::edge_size, words));
}

std::string wave_words(const TakenInKinds& kinds) {
    if (!kinds.is_eased) return "gather here";
    return kinds.is_gathered ? "gather or ease in here, as written" : "ease in here";
}

void add_legend_words(DrawnGroup& group, double y, const std::string& words) {
    group.items.push_back(words_at({bar_length + 55, y}, look::edge_size, words));
}

void add_legend_wave(DrawnGroup& group, double y, const std::string& words) {
    const double rise = look::edge_size * text_ascent_em / 2;
    DrawnPath wave = wave_over(
        {{bar_length + 20, y + rise - look::wave_off}, {bar_length + 50, y + rise - look::wave_off}});
    group.items.push_back(wave);
    add_legend_words(group, y, words);
}

void add_legend_bar(DrawnGroup& group, double y, const std::string& words) {
    const double rise = look::edge_size * text_ascent_em / 2;
    const Point middle{bar_length + 35, y + rise};
    group.items.push_back(
        polyline({middle - Vector{3, 0}, middle + Vector{3, 0}}, look::solid(look::ink, 0.8)));
    add_legend_words(group, y, words);
}

void add_legend_arrow(DrawnGroup& group, double y, const std::string& words) {
    const double rise = look::edge_size * text_ascent_em / 2;
    for (const DrawnItem& item : press_arrow({bar_length + 27, y + rise}, {bar_length + 43, y + rise}))
        group.items.push_back(item);
    add_legend_words(group, y, words);
}

std::string with_name(const std::string& word, const std::string& name) {
    return name.empty() ? word : word + ": " + name;
}

std::string lengths_words(Unit unit) {
    std::string words = "lengths in ";
    words += unit == Unit::mm ? "mm" : unit == Unit::cm ? "cm" : "inches";
    return words + ", as sewn, darts closed";
}

DrawnGroup legend(const SheetNotes& notes) {
    DrawnGroup group{"legend", {}, {}};
    double y = -look::edge_size;
    const double step = 1.5 * look::edge_size;
    if (notes.is_overlay) {
        add_legend_line(group, y, look::before_stroke(), with_name("before", notes.before_name));
        y -= step;
        add_legend_line(group, y, look::outline_stroke(), with_name("after", notes.after_name));
        y -= step;
    }
    if (notes.is_for_cutting) {
        add_legend_line(group, y, look::outline_stroke(), "cutting line: cut here");
        y -= step;
        add_legend_line(group, y, look::stitching_stroke(),
                        notes.has_darts ? "stitching line and dart legs" : "stitching line");
        y -= step;
        if (notes.has_darts) {
            add_legend_line(group, y, look::centre_stroke(), "dart's centre line: fold here");
            y -= step;
        }
        if (notes.has_marked_lines) {
            add_legend_line(group, y, look::mark_stroke(), "marked line");
            y -= step;
        }
    }
    if (notes.has_pressed_darts) {
        add_legend_arrow(group, y, "arrow over a dart's leg: press the dart that way");
        y -= step;
    }
    if (notes.taken_in.is_gathered || notes.taken_in.is_eased) {
        add_legend_wave(group, y, wave_words(notes.taken_in));
        y -= step;
    }
    if (notes.taken_in.is_tucked) {
        add_legend_bar(group, y, "bars on a tuck's legs: stitched so far, released beyond");
        y -= step;
    }
    if (notes.has_lengths)
        group.items.push_back(words_at({bar_length + 20, y}, look::edge_size, lengths_words(notes.unit)));
    return group;
}

struct Laid {
    std::vector<DrawnGroup> groups;
    double width = 0;
    double bottom = 0;
};

struct Row {
    std::vector<DrawnGroup> groups;
    double width = 0;
    double low = 0;  ///< about the base line
    double high = 0;
};

std::vector<Row> rows_of(const std::vector<DrawnPiece>& pieces) {
    std::vector<Row> rows;
    for (const DrawnPiece& piece : pieces) {
        const std::optional<Box> box = bounds(piece.group);
        if (!box) continue;
        const double width = box->high.x - box->low.x;
        const bool is_full =
            !rows.empty() && rows.back().width + look::piece_gap + width > look::widest_row + choice_mm;
        if (rows.empty() || is_full) rows.emplace_back();
        Row& row = rows.back();
        const double left = row.groups.empty() ? 0 : row.width + look::piece_gap;
        row.groups.push_back(moved(piece.group, {left - box->low.x, -piece.base_line}));
        row.width = left + width;
        row.low = std::min(row.low, box->low.y - piece.base_line);
        row.high = std::max(row.high, box->high.y - piece.base_line);
    }
    return rows;
}

/// The rows below each other, the upper left corner of the first at the origin.
Laid lay(const std::vector<DrawnPiece>& pieces) {
    Laid laid;
    for (const Row& row : rows_of(pieces)) {
        if (!laid.groups.empty()) laid.bottom -= look::piece_gap;
        for (const DrawnGroup& group : row.groups)
            laid.groups.push_back(moved(group, {0, laid.bottom - row.high}));
        laid.width = std::max(laid.width, row.width);
        laid.bottom -= row.high - row.low;
    }
    return laid;
}

void take_words(TakenPlaces& taken, const DrawnGroup& group) {
    for (const DrawnItem& item : group.items)
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) taken.add(box_of(*text));
    for (const DrawnGroup& inner : group.groups) take_words(taken, inner);
}

double tick_distance_on(double width, double height) {
    return std::max(width, height) > look::large_sheet ? look::tick_distance_on_large_sheets
                                                       : look::tick_distance;
}

/// Small crosses on the table, save where words are.
DrawnGroup ticks(const Drawing& drawing) {
    TakenPlaces words;
    for (const DrawnGroup& group : drawing.groups) take_words(words, group);
    DrawnGroup group{"table", {}, {}};
    const Stroke stroke = look::solid(look::thread, 0.4);
    const double step = tick_distance_on(drawing.width_mm, drawing.height_mm);
    const double half = look::tick_half;
    for (double x = step; x < drawing.width_mm; x += step) {
        for (double y = step; y < drawing.height_mm; y += step) {
            if (words.meetings(TurnedBox{{x, y}, {1, 0}, half, half}, look::clear_of_lines) > 0) continue;
            group.items.push_back(polyline({{x - half, y}, {x + half, y}}, stroke));
            group.items.push_back(polyline({{x, y - half}, {x, y + half}}, stroke));
        }
    }
    return group;
}

/// Everything but the ticks, with its upper left corner somewhere near the origin.
DrawnGroup contents(const std::vector<DrawnPiece>& pieces, const SheetNotes& notes) {
    DrawnGroup all;
    double y = 0;
    if (!notes.title.empty()) {
        constexpr double longest_title_mm = 500;
        DrawnText title = words_at({0, -look::title_size}, look::title_size,
                                   shortened(notes.title, look::title_size, longest_title_mm, true));
        title.is_bold = true;
        all.groups.push_back({"title", {title}, {}});
        y -= 2 * look::title_size;
    }
    const Laid laid = lay(pieces);
    for (const DrawnGroup& group : laid.groups) all.groups.push_back(moved(group, {0, y}));
    y += laid.bottom - look::piece_gap / 2;
    all.groups.push_back(moved(scale_bar(notes.unit), {0, y}));
    all.groups.push_back(moved(legend(notes), {0, y}));
    if (notes.findings.empty()) return all;
    y -= 40;
    const double list_width = std::clamp(laid.width, least_content_width, widest_list);
    all.groups.push_back(moved(list_of_findings(notes.findings, list_width), {0, y}));
    return all;
}

}  // namespace

TakenInKinds taken_in_by(const Pattern& pattern) {
    TakenInKinds kinds;
    for (const Piece& piece : pattern.pieces) {
        for (const FullStretch& stretch : full_stretches(piece, runs_of(piece.outline)))
            (stretch.is_gathered() ? kinds.is_gathered : kinds.is_eased) = true;
        for (const OutlineItem& item : piece.outline.items)
            kinds.is_tucked = kinds.is_tucked || (item.as_dart() && item.as_dart()->stitched);
    }
    return kinds;
}

Drawing sheet_of(const std::vector<DrawnPiece>& pieces, const SheetNotes& notes) {
    const DrawnGroup all = contents(pieces, notes);
    const Box box = bounds(all).value();  // the bar is always there
    Drawing drawing;
    drawing.width_mm = rounded_up(box.high.x - box.low.x + 2 * look::sheet_margin);
    drawing.height_mm = rounded_up(box.high.y - box.low.y + 2 * look::sheet_margin);
    drawing.background = look::calico;
    drawing.title = notes.title;
    const Vector shift = Point{look::sheet_margin, look::sheet_margin} - box.low;
    for (const DrawnGroup& group : all.groups) drawing.groups.push_back(moved(group, shift));
    drawing.groups.insert(drawing.groups.begin(), ticks(drawing));
    return drawing;
}

}  // namespace dartwright
