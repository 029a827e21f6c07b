#include "dartwright/drawing/pattern_drawing.hpp"

#include <algorithm>

#include "dartwright/drawing/finding_tags.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/table_sheet.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/pattern/whose_sides.hpp"

namespace dartwright {

namespace {

WordsWanted words_wanted(const DrawOptions& options, const Pattern& pattern, const Piece& piece) {
    const std::optional<WhoseSides> sides = whose_sides(pattern, piece);
    return {options.lengths, options.names, pattern.unit, sides ? words_of(*sides) : ""};
}

void take(TakenPlaces& taken, const DrawnGroup& group) {
    for (const DrawnItem& item : group.items)
        if (const DrawnPath* path = std::get_if<DrawnPath>(&item)) taken.add(*path);
    for (const DrawnGroup& inner : group.groups) take(taken, inner);
}

double lowest(const Piece& piece) {
    constexpr double base_error_mm = 0.1;
    const FlatOutline flat = flat_outline(piece.outline, DartsDrawn::to_points, base_error_mm);
    double low = piece.outline.start.y;
    for (const Point p : flat.points) low = std::min(low, p.y);
    return low;
}

/// The layers of lines of a piece, over its paper.
std::vector<DrawnGroup> lines_of(const Piece& piece, const std::vector<Run>& runs,
                                 const std::vector<ItemCap>& caps) {
    return {mark_lines(piece),        outline_lines(piece, look::outline_stroke()),
            dart_lines(piece),        cap_lines(caps),
            notch_lines(piece, runs), fullness_lines(piece, runs),
            grain_lines(piece),       fold_lines(piece, runs)};
}

void add_filled(DrawnGroup& parent, DrawnGroup group) {
    if (!group.items.empty() || !group.groups.empty()) parent.groups.push_back(std::move(group));
}

DrawnPiece drawn_piece(const Piece& piece, const Pattern& pattern, const DrawOptions& options) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const std::vector<ItemCap> caps = caps_of(piece, tolerances_of(pattern));
    DrawnPiece drawn{{piece.name, {}, {}}, lowest(piece)};
    TakenPlaces taken;
    add_filled(drawn.group, paper_of(piece, caps));
    for (DrawnGroup& layer : lines_of(piece, runs, caps)) {
        take(taken, layer);
        add_filled(drawn.group, std::move(layer));
    }
    take_places_of(options.findings, piece.name, taken);
    add_filled(drawn.group, words_of(piece, runs, words_wanted(options, pattern, piece), taken));
    add_filled(drawn.group, tags_on_piece(options.findings, piece.name, taken));
    return drawn;
}

/// The outline and darts as they were: thin, dashed, in slate.
DrawnGroup before_lines(const Piece& piece) {
    DrawnGroup group{"before", {}, {}};
    DrawnGroup outline = outline_lines(piece, look::before_stroke());
    group.groups.push_back(outline);
    DrawnGroup points{"darts", {}, {}};
    for (const OutlineItem& item : piece.outline.items) {
        if (!item.as_dart()) continue;
        DrawnPath spot = circle(item.as_dart()->point, 1.1);
        spot.stroke = look::solid(look::slate, look::thin_width);
        points.items.push_back(spot);
    }
    add_filled(group, std::move(points));
    return group;
}

DrawnPiece overlaid_piece(const Piece& before, const Piece& after, const Pattern& pattern,
                          const DrawOptions& options) {
    const std::vector<Run> runs = runs_of(after.outline);
    const std::vector<ItemCap> caps = caps_of(after, tolerances_of(pattern));
    const DrawnGroup was = before_lines(before);
    DrawnPiece both{{after.name, {}, {}}, std::min(lowest(before), lowest(after))};
    TakenPlaces taken;
    take(taken, was);
    add_filled(both.group, paper_of(after, caps));
    both.group.groups.push_back(was);
    DrawnGroup after_group{"after", {}, {}};
    for (DrawnGroup& layer : lines_of(after, runs, caps)) {
        take(taken, layer);
        add_filled(after_group, std::move(layer));
    }
    take_places_of(options.findings, after.name, taken);
    add_filled(after_group, words_of(after, runs, words_wanted(options, pattern, after), taken));
    both.group.groups.push_back(std::move(after_group));
    add_filled(both.group, tags_on_piece(options.findings, after.name, taken));
    return both;
}

/// A piece that only one of the two patterns has.
DrawnPiece lone_piece(const Piece& piece, const Pattern& pattern, const std::string& layer,
                      const DrawOptions& options) {
    DrawnPiece drawn = drawn_piece(piece, pattern, options);
    DrawnGroup inner = std::move(drawn.group);
    inner.name = layer;
    drawn.group = {piece.name, {}, {}};
    drawn.group.groups.push_back(std::move(inner));
    return drawn;
}

const Piece* find_piece(const Pattern& pattern, const std::string& name) {
    for (const Piece& piece : pattern.pieces)
        if (piece.name == name) return &piece;
    return nullptr;
}

}  // namespace

Drawing draw_pattern(const Pattern& pattern, const DrawOptions& options) {
    const SoundEntry sound(pattern);
    std::vector<DrawnPiece> pieces;
    for (const Piece& piece : pattern.pieces) pieces.push_back(drawn_piece(piece, pattern, options));
    SheetNotes notes;
    notes.title = pattern.name;
    notes.unit = pattern.unit;
    notes.has_lengths = options.lengths;
    notes.taken_in = taken_in_by(pattern);
    notes.findings = options.findings;
    return sheet_of(pieces, notes);
}

Drawing draw_overlay(const Pattern& before, const Pattern& after, const DrawOptions& options) {
    const SoundEntry sound(before, after);
    std::vector<DrawnPiece> pieces;
    for (const Piece& piece : after.pieces) {
        const Piece* was = find_piece(before, piece.name);
        pieces.push_back(was ? overlaid_piece(*was, piece, after, options)
                             : lone_piece(piece, after, "after only", options));
    }
    for (const Piece& piece : before.pieces)
        if (!find_piece(after, piece.name))
            pieces.push_back(lone_piece(piece, before, "before only", options));
    SheetNotes notes;
    notes.title = after.name;
    notes.unit = after.unit;
    notes.has_lengths = options.lengths;
    notes.taken_in = taken_in_by(after);
    notes.is_overlay = true;
    // An operation keeps the name; said twice it would tell nothing.
    if (before.name != after.name) {
        notes.before_name = before.name;
        notes.after_name = after.name;
    }
    notes.findings = options.findings;
    return sheet_of(pieces, notes);
}

}  // namespace dartwright
