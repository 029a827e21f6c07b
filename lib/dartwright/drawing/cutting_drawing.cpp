#include "dartwright/drawing/cutting_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/drawing/allowance_words.hpp"
#include "dartwright/drawing/cutting_words.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/table_sheet.hpp"
#include "dartwright/geometry/point_index.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/pattern/whose_sides.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {

namespace {

void take_layer(TakenPlaces& taken, const DrawnGroup& group) {
    for (const DrawnItem& item : group.items)
        if (const DrawnPath* path = std::get_if<DrawnPath>(&item)) taken.add(*path);
}

void add_layer(DrawnGroup& parent, DrawnGroup group) {
    if (!group.items.empty()) parent.groups.push_back(std::move(group));
}

/// The darts with a mouth on the cutting line, by their items; a trimmed one has none.
std::set<std::size_t> darts_with_mouths(const CuttingLine& line) {
    std::set<std::size_t> items;
    for (const CutSide& side : line.sides)
        if (side.part == CutPart::mouth) items.insert(side.item);
    return items;
}

/// The points of the cutting line over a dart's mouth, from A' to B'.
std::vector<Point> points_over_mouth(const CuttingLine& line, const PointIndex& index,
                                     const DartMarking& dart) {
    std::vector<Point> points;
    const std::size_t last = index.nearest_to(dart.carried_b.back());
    std::size_t i = index.nearest_to(dart.carried_a.back());
    for (; i != last; i = (i + 1) % line.points.size()) points.push_back(line.points[i]);
    points.push_back(line.points[last]);
    return points;
}

/// The cloth that a dart folds away, as far as the cutting line.
DrawnPath folded_wedge(const CuttingPiece& cut, const std::vector<Point>& over_mouth, std::size_t item) {
    const Legs legs = legs_of_item(cut.piece.outline, item);
    DrawnPath path = polyline(over_mouth, {});
    path.curves.push_back(Line{over_mouth.back(), end_of(legs.from_point)});
    path.curves.push_back(reversed(legs.from_point));
    path.curves.push_back(reversed(legs.to_point));
    path.curves.push_back(Line{start_of(legs.to_point), over_mouth.front()});
    path.is_closed = true;
    path.fill = look::folded;
    path.stroke.reset();
    return path;
}

DrawnGroup paper_layer(const CuttingPiece& cut) {
    DrawnGroup group{"paper", {}, {}};
    group.items.push_back(polygon(cut.line.points, look::paper));
    const std::set<std::size_t> with_mouths = darts_with_mouths(cut.line);
    if (with_mouths.empty()) return group;
    const PointIndex index(cut.line.points);
    for (const DartMarking& dart : cut.markings.darts) {
        if (!with_mouths.contains(dart.item)) continue;
        const std::vector<Point> over_mouth = points_over_mouth(cut.line, index, dart);
        if (over_mouth.size() > 1) group.items.push_back(folded_wedge(cut, over_mouth, dart.item));
    }
    return group;
}

DrawnGroup cutting_layer(const CuttingLine& line) {
    DrawnPath path = polyline(line.points, look::outline_stroke());
    path.curves.push_back(Line{line.points.back(), line.points.front()});
    path.is_closed = true;
    return {"cutting line", {path}, {}};
}

DrawnGroup stitching_layer(const Piece& piece) {
    DrawnGroup group = stitched_lines(piece, look::stitching_stroke());
    group.name = "stitching line";
    return group;
}

/// Centre lines, points and pivots, with the legs and the centre line carried on to the cutting line.
DrawnGroup dart_layer(const CuttingPiece& cut) {
    DrawnGroup group = dart_lines(cut.piece, TuckPoints::left_out);
    const auto carry = [&](Point from, Point to, const Stroke& stroke) {
        if (distance(from, to) > cutting_line_error_mm) group.items.push_back(polyline({from, to}, stroke));
    };
    for (const DartMarking& dart : cut.markings.darts) {
        const Stroke leg = look::solid(look::ink, look::thin_width);
        carry(dart.carried_a.front(), dart.carried_a.back(), leg);
        carry(dart.carried_b.front(), dart.carried_b.back(), leg);
        carry(middle(dart.carried_a.front(), dart.carried_b.front()), dart.tip, look::centre_stroke());
    }
    return group;
}

DrawnGroup notch_layer(const Markings& markings) {
    constexpr double notch_width = 0.8;
    DrawnGroup group{"notches", {}, {}};
    for (const NotchMarking& notch : markings.notches)
        for (const Nick& nick : notch.nicks)
            for (const std::vector<Point>& stroke : nick.strokes)
                group.items.push_back(polyline(stroke, look::solid(look::ink, notch_width)));
    return group;
}

DrawnGroup grain_layer(const CuttingPiece& cut) {
    Piece with_arrow;
    if (cut.markings.grain) with_arrow.grain = Grain{cut.markings.grain->from, cut.markings.grain->to, ""};
    return grain_lines(with_arrow);
}

/// The side on which each dart lies: that for which its cap was cut.
std::vector<PressedDart> pressed_darts(const CuttingPiece& cut) {
    std::vector<PressedDart> pressed;
    for (const CutDart& dart : cut.line.darts) {
        if (!dart.pressed) continue;
        const DartFigures figures = figures_of(cut.piece.outline, dart.item);
        const double dip = -dot(dart.tip - middle(figures.a, figures.b), dart.centre);
        pressed.push_back({dart.item, *dart.pressed, std::max(0.0, dip)});
    }
    return pressed;
}

std::vector<DrawnGroup> cutting_lines_of(const CuttingPiece& cut) {
    const std::vector<Run> runs = runs_of(cut.piece.outline);
    return {mark_lines(cut.piece),
            cutting_layer(cut.line),
            stitching_layer(cut.piece),
            dart_layer(cut),
            press_arrows(cut.piece, pressed_darts(cut)),
            notch_layer(cut.markings),
            fullness_lines(cut.piece, runs),
            grain_layer(cut),
            fold_lines(cut.piece, runs)};
}

/// The allowance of a seam's part where it has one and the same all along.
std::optional<double> only_width(const Pattern& pattern, const SeamPart& part) {
    const Piece& piece = piece_named(pattern, part.piece);
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run* run = find_run(runs, part.edge);
    const std::vector<RunWidth> widths = run ? widths_along(piece, *run) : std::vector<RunWidth>{};
    return widths.size() == 1 ? widths.front().width_mm : std::nullopt;
}

/// `0.6 cm on skirt front`; empty where the other side's widths are not decided, or are the same.
std::string widths_beside(const Pattern& pattern, const SeamPart& own, const SeamSide& others) {
    const std::optional<double> own_width = only_width(pattern, own);
    std::string words;
    for (const SeamPart& other : others) {
        const std::optional<double> width = only_width(pattern, other);
        if (other.piece == own.piece || !width) continue;
        if (own_width && std::abs(*own_width - *width) < reads_alike_mm) continue;
        words += (words.empty() ? "" : ", ") + width_words(*width, pattern.unit) + " on " + other.piece;
    }
    return words;
}

/// `side: 0.6 cm on skirt front, as meant`: without it the two pieces of a flat-felled seam look like a
/// mistake. Edges of which the same is to be said share a line.
std::vector<std::string> meant_to_differ(const Pattern& pattern, const std::string& piece) {
    struct EdgesAndWords {
        std::string edges;
        std::string words;
    };
    std::vector<EdgesAndWords> found;
    const auto add = [&](const std::string& edge, const std::string& words) {
        if (words.empty()) return;
        const auto same = std::find_if(found.begin(), found.end(),
                                       [&](const EdgesAndWords& each) { return each.words == words; });
        if (same == found.end())
            found.push_back({edge, words});
        else
            same->edges += ", " + edge;
    };
    for (const Seam& seam : pattern.seams) {
        if (!seam.allowances_differ) continue;
        for (const std::size_t side : {0u, 1u})
            for (const SeamPart& own : seam.joins[side])
                if (own.piece == piece) add(own.edge, widths_beside(pattern, own, seam.joins[1 - side]));
    }
    std::vector<std::string> lines;
    for (const EdgesAndWords& each : found) lines.push_back(each.edges + ": " + each.words + ", as meant");
    return lines;
}

double lowest_cut(const CuttingLine& line) {
    double low = line.points.front().y;
    for (const Point p : line.points) low = std::min(low, p.y);
    return low;
}

}  // namespace

DrawnGroup draw_cutting_piece(const CuttingPiece& piece, const CuttingLabel& label) {
    DrawnGroup group{piece.piece.name, {}, {}};
    TakenPlaces taken;
    add_layer(group, paper_layer(piece));
    for (DrawnGroup& layer : cutting_lines_of(piece)) {
        take_layer(taken, layer);
        add_layer(group, std::move(layer));
    }
    add_layer(group, cutting_words(piece, label, taken));
    return group;
}

CuttingLabel label_of_piece(CuttingLabel label, const Pattern& pattern, const std::string& piece) {
    const auto found = std::find_if(pattern.pieces.begin(), pattern.pieces.end(),
                                    [&](const Piece& each) { return each.name == piece; });
    if (found == pattern.pieces.end()) return label;
    label.number = static_cast<std::size_t>(found - pattern.pieces.begin()) + 1;
    label.pieces = pattern.pieces.size();
    const std::optional<WhoseSides> sides = whose_sides(pattern, *found);
    label.sides = sides ? words_of(*sides) : "";
    label.meant = meant_to_differ(pattern, piece);
    return label;
}

Drawing draw_cutting_pieces(const Pattern& pattern, const std::vector<CuttingPiece>& pieces,
                            const CuttingLabel& label) {
    const SoundEntry sound(pattern);
    std::vector<DrawnPiece> drawn;
    for (const CuttingPiece& piece : pieces) {
        const CuttingLabel own = label_of_piece(label, pattern, piece.piece.name);
        drawn.push_back({draw_cutting_piece(piece, own), lowest_cut(piece.line)});
    }
    SheetNotes notes;
    notes.title = label.pattern;
    notes.unit = label.unit;
    notes.has_lengths = false;
    notes.is_for_cutting = true;
    notes.has_darts = std::any_of(pieces.begin(), pieces.end(), [](const CuttingPiece& piece) {
        return !piece.markings.darts.empty() || !piece.piece.double_darts.empty();
    });
    notes.has_marked_lines = std::any_of(pieces.begin(), pieces.end(), [](const CuttingPiece& piece) {
        return std::any_of(piece.piece.marks.begin(), piece.piece.marks.end(),
                           [](const Mark& mark) { return std::holds_alternative<LineMark>(mark.what); });
    });
    notes.has_pressed_darts = std::any_of(pieces.begin(), pieces.end(), [](const CuttingPiece& piece) {
        return !pressed_darts(piece).empty();
    });
    notes.taken_in = taken_in_by(pattern);
    return sheet_of(drawn, notes);
}

Drawing draw_cutting_pieces(const Pattern& pattern, const CuttingDrawOptions& options) {
    const SoundEntry sound(pattern);
    std::vector<CuttingPiece> pieces;
    for (const Piece& piece : pattern.pieces) {
        CuttingRequest request = cutting_request(pattern, piece);
        request.undecided_mm = options.undecided_mm;
        pieces.push_back(cutting_piece(piece, request, options.markings.value_or(marking_request(pattern))));
    }
    return draw_cutting_pieces(pattern, pieces, {pattern.name, options.size, options.date, pattern.unit});
}

}  // namespace dartwright
