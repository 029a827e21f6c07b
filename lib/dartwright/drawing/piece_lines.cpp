#include "dartwright/drawing/piece_lines.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/words_along.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/fullness.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

namespace {

constexpr double point_radius = 1.1;
constexpr double pivot_radius = 2.8;
constexpr double release_bar = 6;
constexpr double drill_radius = 1.6;
constexpr double arrow_length = 7;
constexpr double arrow_half_width = 2.2;
constexpr double press_arrow_share = 0.6;     // of the size of the grain's arrow heads
constexpr double press_arrow_beyond_leg = 8;  // room for its head on the side where the cloth will lie
constexpr double press_arrow_up_dart = 0.3;   // of the way from the mouth to the point
constexpr double press_arrow_farthest = 35;   // from the mouth

/// Point and pivot nearer than this are drawn as one place, mm.
constexpr double same_place = 0.05;

void add_item(DrawnPath& path, const Outline& outline, std::size_t item) {
    if (outline.items[item].as_dart()) {
        const Legs legs = legs_of_item(outline, item);
        path.curves.push_back(legs.to_point);
        path.curves.push_back(legs.from_point);
    } else {
        const std::vector<Curve> curves = curves_of_item(outline, item);
        path.curves.insert(path.curves.end(), curves.begin(), curves.end());
    }
}

DrawnPath outline_path(const Outline& outline) {
    DrawnPath path;
    for (std::size_t i = 0; i < outline.items.size(); ++i) add_item(path, outline, i);
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

/// A triangle with its tip there, of a share of the full size.
DrawnPath arrow_head(Point tip, Vector direction, Colour colour, double share = 1) {
    const Point back = tip - share * arrow_length * direction;
    const Vector side = share * arrow_half_width * perpendicular(direction);
    return polygon({tip, back + side, back - side}, colour);
}

struct PlaceOnLine {
    Point point;
    Vector along;
};

/// A line of points, none twice in a row, with the distances along it.
class WavedLine {
  public:
    explicit WavedLine(std::vector<Point> points) : points_(std::move(points)) {
        reached_.push_back(0);
        for (std::size_t i = 1; i < points_.size(); ++i)
            reached_.push_back(reached_.back() + distance(points_[i - 1], points_[i]));
    }
    double length() const { return reached_.back(); }
    PlaceOnLine at(double along) const {
        const auto after = std::upper_bound(reached_.begin() + 1, reached_.end() - 1, along);
        const std::size_t i = static_cast<std::size_t>(after - reached_.begin());
        const double step = reached_[i] - reached_[i - 1];
        const double share = step > 0 ? std::clamp((along - reached_[i - 1]) / step, 0.0, 1.0) : 0;
        return {between(points_[i - 1], points_[i], share), unit(points_[i] - points_[i - 1])};
    }

  private:
    std::vector<Point> points_;
    std::vector<double> reached_;
};

/// A wave beside the line, on its left: half waves as cubics, the trade's sign for gathers.
DrawnPath wave_beside(const WavedLine& line) {
    DrawnPath path;
    path.stroke = look::fullness_stroke();
    const double halves = std::max(2.0, std::round(line.length() / look::half_wave + choice_mm));
    const double step = line.length() / halves;
    // A cubic whose controls stand so far aside reaches 3/4 as far.
    const double aside = look::wave_height / 0.75;
    const auto off = [&](double along, double height) {
        const PlaceOnLine place = line.at(along);
        return place.point + (look::wave_off + height) * perpendicular(place.along);
    };
    for (int i = 0; i < static_cast<int>(halves); ++i) {
        const double height = i % 2 == 0 ? aside : -aside;
        path.curves.push_back(Cubic{{off(i * step, 0), off((i + 1.0 / 3) * step, height),
                                     off((i + 2.0 / 3) * step, height), off((i + 1) * step, 0)}});
    }
    return path;
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

/// A tuck's legs, each as far as it is stitched.
struct StitchedLegs {
    Curve to_end;
    Curve from_end;
};
StitchedLegs stitched_legs(const Outline& outline, std::size_t item) {
    const double stitched = *outline.items[item].as_dart()->stitched;
    const Legs legs = legs_of_item(outline, item);
    const double up = parameter_at(legs.to_point, stitched);
    const double down = parameter_at(legs.from_point, length(legs.from_point) - stitched);
    return {part_between(legs.to_point, 0, up), part_between(legs.from_point, down, 1)};
}

// What is folded away: a tuck's cloth beyond its stitching is not.
DrawnPath stitched_wedge(const Outline& outline, std::size_t item, const std::vector<ItemCap>& caps) {
    const DartItem& dart = *outline.items[item].as_dart();
    if (!dart.stitched) return wedge(outline, item, caps);
    const StitchedLegs legs = stitched_legs(outline, item);
    const PairOfPoints ends = stitching_ends(outline, item);
    DrawnPath path;
    path.curves = {legs.to_end, Line{ends.first, ends.second}, legs.from_end};
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

DrawnGroup stitched_lines(const Piece& piece, const Stroke& stroke) {
    const Outline& outline = piece.outline;
    const auto is_tuck = [&](std::size_t i) {
        return outline.items[i].as_dart() && outline.items[i].as_dart()->stitched;
    };
    std::size_t first = 0;
    while (first < outline.items.size() && !is_tuck(first)) ++first;
    if (first == outline.items.size()) return outline_lines(piece, stroke);
    DrawnGroup group{"outline", {}, {}};
    DrawnPath path = stroked({}, stroke);
    // Each part begins on the second leg of a tuck and ends on the first of the next.
    for (std::size_t n = 0; n <= outline.items.size(); ++n) {
        const std::size_t i = (first + n) % outline.items.size();
        if (!is_tuck(i)) {
            add_item(path, outline, i);
            continue;
        }
        const StitchedLegs legs = stitched_legs(outline, i);
        path.curves.push_back(legs.to_end);
        if (n > 0) group.items.push_back(path);
        path.curves = {legs.from_end};
    }
    return group;
}

DrawnGroup dart_lines(const Piece& piece, TuckPoints tucks) {
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
        if (!dart->stitched || tucks == TuckPoints::shown) add_point(group, dart->point);
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

DrawnPath wave_over(const std::vector<Point>& line) {
    return wave_beside(WavedLine(line));
}

std::vector<DrawnItem> press_arrow(Point from, Point tip) {
    return {polyline({from, tip}, look::solid(look::ink, look::thin_width)),
            arrow_head(tip, unit(tip - from), look::ink, press_arrow_share)};
}

DrawnGroup fullness_lines(const Piece& piece, const std::vector<Run>& runs) {
    DrawnGroup group{"fullness", {}, {}};
    for (const FullStretch& stretch : full_stretches(piece, runs)) {
        const WavedLine line(points_of_stretch(piece.outline, stretch));
        if (line.length() > 0) group.items.push_back(wave_beside(line));
    }
    return group;
}

DrawnGroup press_arrows(const Piece& piece, const std::vector<PressedDart>& darts) {
    DrawnGroup group{"press", {}, {}};
    for (const PressedDart& dart : darts) {
        const DartFigures figures = figures_of(piece.outline, dart.item);
        const Point mouth = middle(figures.a, figures.b);
        const double length = distance(mouth, figures.point);
        if (length == 0 || figures.a == figures.b) continue;
        const double up = std::clamp(dart.begins_mm, 0.0, length / 2) +
                          std::min(press_arrow_up_dart * length, press_arrow_farthest);
        const Point from = between(mouth, figures.point, up / length);
        const double to_leg = (1 - up / length) * figures.intake / 2;
        const Point leg_end = dart.side == PressSide::before ? figures.a : figures.b;
        const Vector over = unit(leg_end - mouth);
        const Point tip = from + (to_leg + press_arrow_beyond_leg) * over;
        for (const DrawnItem& item : press_arrow(from, tip)) group.items.push_back(item);
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

std::vector<FoldBracket> fold_brackets(const Piece& piece, const std::vector<Run>& runs) {
    std::vector<FoldBracket> brackets;
    for (const std::string& edge : fold_edges(piece)) {
        const Run* run = find_run(runs, edge);
        if (!run) continue;
        const Point start = end_point(piece.outline, *run, RunEnd::start);
        const Point end = end_point(piece.outline, *run, RunEnd::end);
        FoldBracket& bracket = brackets.emplace_back();
        bracket.inwards = perpendicular(unit(end - start));
        bracket.depth = std::min(14.0, 0.12 * distance(start, end));
        bracket.start = between(start, end, 0.1) + bracket.depth * bracket.inwards;
        bracket.end = between(start, end, 0.9) + bracket.depth * bracket.inwards;
    }
    return brackets;
}

DrawnGroup fold_lines(const Piece& piece, const std::vector<Run>& runs) {
    DrawnGroup group{"fold", {}, {}};
    constexpr double clear_of_fold = 1.5;
    for (const FoldBracket& bracket : fold_brackets(piece, runs)) {
        const Vector out = -bracket.inwards;
        const Vector reach = (bracket.depth - clear_of_fold) * out;
        group.items.push_back(
            polyline({bracket.start + reach, bracket.start, bracket.end, bracket.end + reach},
                     look::solid(look::ink, look::thin_width)));
        group.items.push_back(arrow_head(bracket.start + reach, out, look::ink));
        group.items.push_back(arrow_head(bracket.end + reach, out, look::ink));
    }
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
