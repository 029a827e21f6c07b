#include "dartwright/drawing/piece_lines.hpp"

#include <algorithm>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

namespace {

constexpr double point_radius = 1.1;
constexpr double pivot_radius = 2.8;
constexpr double release_bar = 6;
constexpr double drill_radius = 1.6;
constexpr double arrow_length = 7;
constexpr double arrow_half_width = 2.2;

/// Point and pivot nearer than this are drawn as one place, mm.
constexpr double same_place = 0.05;

DrawnPath outline_path(const Outline& outline) {
    DrawnPath path;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) {
            const Legs legs = legs_of_item(outline, i);
            path.curves.push_back(legs.to_point);
            path.curves.push_back(legs.from_point);
        } else {
            const std::vector<Curve> curves = curves_of_item(outline, i);
            path.curves.insert(path.curves.end(), curves.begin(), curves.end());
        }
    }
    path.is_closed = gap_of(outline) <= Tolerances{}.gap_mm;
    return path;
}

DrawnPath filled(DrawnPath path, Colour fill) {
    path.fill = fill;
    path.stroke.reset();
    path.is_closed = true;
    return path;
}

DrawnPath stroked(DrawnPath path, const Stroke& stroke) {
    path.stroke = stroke;
    return path;
}

/// A triangle with its tip there.
DrawnPath arrow_head(Point tip, Vector direction, Colour colour) {
    const Point back = tip - arrow_length * direction;
    const Vector side = arrow_half_width * perpendicular(direction);
    return polygon({tip, back + side, back - side}, colour);
}

void add_pivot(DrawnGroup& group, Point pivot) {
    const Stroke stroke = look::solid(look::ink, look::thin_width);
    DrawnPath ring = stroked(circle(pivot, pivot_radius), stroke);
    ring.fill = look::paper;
    group.items.push_back(ring);
    group.items.push_back(
        polyline({pivot - Vector{pivot_radius, 0}, pivot + Vector{pivot_radius, 0}}, stroke));
    group.items.push_back(
        polyline({pivot - Vector{0, pivot_radius}, pivot + Vector{0, pivot_radius}}, stroke));
}

void add_point(DrawnGroup& group, Point point) {
    DrawnPath dot = circle(point, point_radius);
    dot.fill = look::ink;
    group.items.push_back(dot);
}

// Closes a path that ends at B over the mouth: along the cap, or straight if there is none.
void close_over_mouth(DrawnPath& path, std::size_t item, const std::vector<ItemCap>& caps) {
    for (const ItemCap& of_dart : caps) {
        if (of_dart.item != item) continue;
        const std::vector<Curve>& curves = of_dart.cap.curves;
        for (auto curve = curves.rbegin(); curve != curves.rend(); ++curve)
            path.curves.push_back(reversed(*curve));
    }
    path.is_closed = true;
}

DrawnPath wedge(const Outline& outline, std::size_t item, const std::vector<ItemCap>& caps) {
    const Legs legs = legs_of_item(outline, item);
    DrawnPath path;
    path.curves = {legs.to_point, legs.from_point};
    close_over_mouth(path, item, caps);
    return path;
}

// What is folded away: a tuck's cloth beyond its stitching is not.
DrawnPath stitched_wedge(const Outline& outline, std::size_t item, const std::vector<ItemCap>& caps) {
    const DartItem& dart = *outline.items[item].as_dart();
    if (!dart.stitched) return wedge(outline, item, caps);
    const Legs legs = legs_of_item(outline, item);
    const double up = parameter_at(legs.to_point, *dart.stitched);
    const double down = parameter_at(legs.from_point, length(legs.from_point) - *dart.stitched);
    const PairOfPoints ends = stitching_ends(outline, item);
    DrawnPath path;
    path.curves = {part_between(legs.to_point, 0, up), Line{ends.first, ends.second},
                   part_between(legs.from_point, down, 1)};
    close_over_mouth(path, item, caps);
    return path;
}

// A bar across the end of a tuck's stitching on each leg.
void add_release(DrawnGroup& group, const Outline& outline, std::size_t item) {
    const PairOfPoints ends = stitching_ends(outline, item);
    const Vector across = release_bar / 2 * unit(ends.second - ends.first);
    const Stroke stroke = look::solid(look::ink, 0.8);
    for (const Point end : {ends.first, ends.second})
        group.items.push_back(polyline({end - across, end + across}, stroke));
}

DrawnPath diamond(const DoubleDart& dart) {
    DrawnPath path = polyline({dart.from, dart.widest[0], dart.to, dart.widest[1], dart.from}, {});
    path.is_closed = true;
    return path;
}

}  // namespace

std::vector<ItemCap> caps_of(const Piece& piece, const Tolerances& tolerances) {
    std::vector<ItemCap> caps;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (!piece.outline.items[i].as_dart()) continue;
        std::optional<Cap> cap = cap_if_any(piece, i, tolerances);
        // A spike is nothing to cut along, and may be metres long.
        if (cap && !cap->is_far_out) caps.push_back({i, std::move(*cap)});
    }
    return caps;
}

DrawnGroup paper_of(const Piece& piece, const std::vector<ItemCap>& caps) {
    DrawnGroup group{"paper", {}, {}};
    if (piece.outline.items.empty()) return group;
    group.items.push_back(filled(outline_path(piece.outline), look::paper));
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i)
        if (const DartItem* dart = piece.outline.items[i].as_dart()) {
            if (dart->stitched) group.items.push_back(filled(wedge(piece.outline, i, caps), look::paper));
            group.items.push_back(filled(stitched_wedge(piece.outline, i, caps), look::folded));
        }
    for (const DoubleDart& dart : piece.double_darts)
        group.items.push_back(filled(diamond(dart), look::folded));
    return group;
}

DrawnGroup outline_lines(const Piece& piece, const Stroke& stroke) {
    DrawnGroup group{"outline", {}, {}};
    if (!piece.outline.items.empty()) group.items.push_back(stroked(outline_path(piece.outline), stroke));
    return group;
}

DrawnGroup dart_lines(const Piece& piece) {
    DrawnGroup group{"darts", {}, {}};
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        const Point a = start_of_item(piece.outline, i);
        const Point b = piece.outline.items[i].to;
        group.items.push_back(polyline({a, b}, look::mark_stroke()));
        group.items.push_back(polyline({middle(a, b), dart->turning_point()}, look::centre_stroke()));
        if (distance(dart->point, dart->turning_point()) > same_place)
            add_pivot(group, dart->turning_point());
        if (dart->stitched) add_release(group, piece.outline, i);
        add_point(group, dart->point);
    }
    for (const DoubleDart& dart : piece.double_darts) {
        group.items.push_back(polyline({dart.from, dart.to}, look::centre_stroke()));
        group.items.push_back(stroked(diamond(dart), look::outline_stroke()));
        add_point(group, dart.from);
        add_point(group, dart.to);
    }
    return group;
}

DrawnGroup cap_lines(const std::vector<ItemCap>& caps) {
    DrawnGroup group{"caps", {}, {}};
    for (const ItemCap& of_dart : caps) {
        DrawnPath path;
        path.curves = of_dart.cap.curves;
        group.items.push_back(stroked(std::move(path), look::solid(look::ink, look::thin_width)));
    }
    return group;
}

DrawnGroup notch_lines(const Piece& piece, const std::vector<Run>& runs) {
    DrawnGroup group{"notches", {}, {}};
    for (const Notch& notch : piece.notches) {
        const Run* run = find_run(runs, notch.edge);
        const std::optional<RunEnd> end = run ? end_named(*run, notch.from) : std::nullopt;
        if (!end) continue;
        const double at = *end == RunEnd::start ? notch.at : run->length - notch.at;
        const int strokes = notch.kind == NotchKind::single ? 1 : notch.kind == NotchKind::double_ ? 2 : 3;
        for (int i = 0; i < strokes; ++i) {
            const double aside = (i - 0.5 * (strokes - 1)) * look::notch_spacing;
            const RunPlace place = place_on_run(piece.outline, *run, at + aside);
            const Vector half = look::notch_length / 2 * perpendicular(place.tangent);
            group.items.push_back(
                polyline({place.point - half, place.point + half}, look::solid(look::ink, 0.8)));
        }
    }
    return group;
}

DrawnGroup grain_lines(const Piece& piece) {
    DrawnGroup group{"grain", {}, {}};
    if (!piece.grain) return group;
    const Vector along = unit(piece.grain->to - piece.grain->from);
    group.items.push_back(
        polyline({piece.grain->from, piece.grain->to}, look::solid(look::ink, look::thin_width)));
    group.items.push_back(arrow_head(piece.grain->to, along, look::ink));
    group.items.push_back(arrow_head(piece.grain->from, -along, look::ink));
    return group;
}

std::optional<FoldBracket> fold_bracket(const Piece& piece, const std::vector<Run>& runs) {
    if (!piece.cut || piece.cut->fold.empty()) return std::nullopt;
    const Run* run = find_run(runs, piece.cut->fold);
    if (!run) return std::nullopt;
    const Point start = end_point(piece.outline, *run, RunEnd::start);
    const Point end = end_point(piece.outline, *run, RunEnd::end);
    FoldBracket bracket;
    bracket.inwards = perpendicular(unit(end - start));
    bracket.depth = std::min(14.0, 0.12 * distance(start, end));
    bracket.start = between(start, end, 0.1) + bracket.depth * bracket.inwards;
    bracket.end = between(start, end, 0.9) + bracket.depth * bracket.inwards;
    return bracket;
}

DrawnGroup fold_lines(const Piece& piece, const std::vector<Run>& runs) {
    DrawnGroup group{"fold", {}, {}};
    const std::optional<FoldBracket> bracket = fold_bracket(piece, runs);
    if (!bracket) return group;
    constexpr double clear_of_fold = 1.5;
    const Vector out = -bracket->inwards;
    const Vector reach = (bracket->depth - clear_of_fold) * out;
    group.items.push_back(
        polyline({bracket->start + reach, bracket->start, bracket->end, bracket->end + reach},
                 look::solid(look::ink, look::thin_width)));
    group.items.push_back(arrow_head(bracket->start + reach, out, look::ink));
    group.items.push_back(arrow_head(bracket->end + reach, out, look::ink));
    return group;
}

DrawnGroup mark_lines(const Piece& piece) {
    DrawnGroup group{"marks", {}, {}};
    for (const Mark& mark : piece.marks) {
        if (const LineMark* line = std::get_if<LineMark>(&mark.what)) {
            if (line->points.size() > 1) group.items.push_back(polyline(line->points, look::mark_stroke()));
        } else {
            group.items.push_back(stroked(circle(std::get<DrillMark>(mark.what).at, drill_radius),
                                          look::solid(look::ink, look::thin_width)));
        }
    }
    return group;
}

}  // namespace dartwright
