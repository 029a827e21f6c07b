#pragma once

// Generated pieces for properties: outlines that are star-shaped about a pivot (every place can be reached
// by a straight cut), with straight, curved and measured edges, one dart or two about that pivot, and sizes
// from a doll's bodice to a cloak.

#include <rapidcheck.h>

#include <cmath>
#include <vector>

#include "dartwright/geometry/curve.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "support/evenly.hpp"

namespace dartwright::testing {

inline double real_between(double low, double high) {
    return low + (high - low) * (*evenly(0, 1000001)) / 1e6;
}
inline double log_between(double low, double high) {
    return std::exp(real_between(std::log(low), std::log(high)));
}

struct GeneratedPiece {
    Pattern pattern;
    Point pivot;
    double size_mm = 0;
    std::vector<std::string> darts;  ///< all about the pivot
};

inline Point polar(Point centre, double radius, double angle) {
    return {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)};
}

// A shape from one corner to the next that stays within a narrow band about the chord.
inline Shape any_shape(Point from, Point to, bool may_curve) {
    const int kind = may_curve ? *evenly(0, 3) : 0;
    const Vector along = to - from;
    const Vector aside = perpendicular(along);
    if (kind == 1) {
        return CubicShape{{from + along / 3 + real_between(-0.08, 0.08) * aside,
                           from + 2 * along / 3 + real_between(-0.08, 0.08) * aside}};
    }
    if (kind == 2) {
        return SplineShape{{from + 0.3 * along + real_between(-0.04, 0.04) * aside,
                            from + 0.7 * along + real_between(-0.04, 0.04) * aside}};
    }
    return StraightShape{};
}

/// The sector of the outline between two darts (or all round from one dart to itself): corners at growing
/// angles, the first and last at mouth ends.
struct Sector {
    double from_angle = 0;
    double to_angle = 0;
    double first_radius = 0;
    double last_radius = 0;
};

// Edge names: a new run begins at a corner now and then.
class RunNames {
  public:
    explicit RunNames(std::string first) : current_(std::move(first)) {}
    const std::string& current() const { return current_; }
    void begin_next() { current_ = "edge " + std::to_string(++count_); }

  private:
    std::string current_;
    int count_ = 0;
};

inline GeneratedPiece any_piece(bool may_curve, int dart_count) {
    GeneratedPiece out;
    out.size_mm = log_between(60, 1500);
    out.pivot = {real_between(-500, 500), real_between(-500, 500)};
    const double r = out.size_mm / 2;
    Piece piece;
    piece.name = "piece";
    std::vector<double> openings;
    double open = 0;
    for (int d = 0; d < dart_count; ++d) openings.push_back(radians(real_between(4, 30)));
    for (const double angle : openings) open += angle;
    const double cloth = (2 * pi - open) / dart_count;
    double angle = real_between(0, 2 * pi);
    const double cloth_start = angle;
    // The grain lies in cloth, not in a dart's wedge, so that it always says which part stays; so do the
    // marks.
    const double grain_angle = angle + cloth * real_between(0.3, 0.7);
    RunNames names("edge 0");
    std::vector<double> leg(openings.size());
    for (double& each : leg) each = r * real_between(0.7, 1.0);
    piece.outline.start = polar(out.pivot, leg[0], angle);
    for (int d = 0; d < dart_count; ++d) {
        const int corners = *evenly(3, 6);
        Point from = polar(out.pivot, leg[std::size_t(d)], angle);
        for (int k = 1; k <= corners + 1; ++k) {
            const bool is_last = k == corners + 1;
            const std::size_t next = std::size_t(d + 1) % openings.size();
            angle += cloth / (corners + 1);
            const double radius = is_last ? leg[next] : r * real_between(0.75, 1.0);
            const Point to = polar(out.pivot, radius, angle);
            // The run that the last dart stands in is the first one, so that names stay contiguous.
            const bool closes = d + 1 == dart_count && is_last;
            const std::string name = closes ? "edge 0" : names.current();
            piece.outline.items.push_back({EdgeItem{name, any_shape(from, to, may_curve), 0}, to});
            const bool must_change = d + 1 == dart_count && k == corners;
            if (!is_last && (k % 2 == 1 || must_change)) names.begin_next();
            from = to;
        }
        const std::size_t next = std::size_t(d + 1) % openings.size();
        DartItem dart;
        dart.name = "dart " + std::to_string(next);
        const double opening = openings[next];
        const double back_off = *evenly(0, 2) == 0 ? 0.0 : leg[next] * real_between(0.02, 0.2);
        dart.pivot = out.pivot;
        dart.point = polar(out.pivot, back_off, angle + opening / 2);
        if (back_off == 0) dart.point = out.pivot;
        angle += opening;
        Point to = polar(out.pivot, leg[next], angle);
        if (next == 0) to = piece.outline.start;
        piece.outline.items.push_back({dart, to});
        out.darts.push_back(dart.name);
    }
    const std::string along = piece.outline.items[std::size_t(*evenly(0, 2))].as_edge()->edge;
    piece.grain = Grain{polar(out.pivot, r / 5, grain_angle), polar(out.pivot, r / 3, grain_angle), along};
    piece.cut = Cut{};
    for (const Run& run : runs_of(piece.outline)) {
        piece.notches.push_back(
            {run.edge, name_of_end(run, RunEnd::start), run.length * 0.4, NotchKind::single});
    }
    piece.marks.push_back({LineMark{{polar(out.pivot, r / 2, cloth_start + 0.1 * cloth),
                                     polar(out.pivot, r / 2, cloth_start + 0.4 * cloth)}},
                           "level"});
    piece.marks.push_back({DrillMark{polar(out.pivot, r / 2, cloth_start + 0.6 * cloth)}, "hole"});
    out.pattern.name = "generated";
    out.pattern.pieces.push_back(piece);
    return out;
}

/// A place on any run, at least 2 mm from its ends and from every mouth and joint; empty if the run has none.
inline std::string any_place(const Piece& piece, double* distance = nullptr) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = runs[any_index_of(runs)];
    const double at = real_between(0.05, 0.95) * run.length;
    std::vector<double> stops = item_distances(piece.outline, run);
    stops.push_back(run.length);
    for (const double mouth : dart_distances(piece.outline, run)) stops.push_back(mouth);
    for (const double stop : stops) {
        if (std::abs(stop - at) < 2) return {};
    }
    if (distance) *distance = at;
    char text[128];
    std::snprintf(text, sizeof text, "%s@%.12f/%s", run.edge.c_str(), at,
                  name_of_end(run, RunEnd::start).c_str());
    return text;
}

/// A similarity of the plane: a turn, perhaps a reflection first, a scale and a shift.
struct Similarity {
    double angle = 0;
    double scale = 1;
    bool is_reflected = false;
    Vector shift;
};

inline Point image(const Similarity& s, Point p) {
    const Vector v = s.is_reflected ? Vector{-p.x, p.y} : Vector{p.x, p.y};
    return Point{} + (apply(turn_by(s.angle), s.scale * v) + s.shift);
}

/// Reflected runs are walked the other way, so the two reserved words for their ends change places.
inline std::string end_word_in_image(const Similarity& s, const std::string& from) {
    if (!s.is_reflected || (from != "start" && from != "end")) return from;
    return from == "start" ? "end" : "start";
}

inline Piece image(const Similarity& s, Piece piece) {
    Outline& outline = piece.outline;
    outline.start = image(s, outline.start);
    for (OutlineItem& item : outline.items) {
        item.to = image(s, item.to);
        if (EdgeItem* edge = item.as_edge()) {
            edge->fullness *= s.scale;
            if (auto* cubic = std::get_if<CubicShape>(&edge->shape)) {
                for (Point& p : cubic->controls) p = image(s, p);
            }
            if (auto* spline = std::get_if<SplineShape>(&edge->shape)) {
                for (Point& p : spline->through) p = image(s, p);
            }
        }
        if (DartItem* dart = item.as_dart()) {
            dart->point = image(s, dart->point);
            if (dart->pivot) dart->pivot = image(s, *dart->pivot);
            if (!dart->legs) continue;
            for (std::array<Point, 2>& leg : *dart->legs) {
                for (Point& control : leg) control = image(s, control);
            }
        }
    }
    for (DoubleDart& dart : piece.double_darts) {
        for (Point* p : {&dart.from, &dart.to, &dart.widest[0], &dart.widest[1]}) *p = image(s, *p);
    }
    if (s.is_reflected) outline = reversed(outline);
    if (piece.grain)
        piece.grain = Grain{image(s, piece.grain->from), image(s, piece.grain->to), piece.grain->along};
    for (Notch& notch : piece.notches) {
        notch.at *= s.scale;
        notch.from = end_word_in_image(s, notch.from);
    }
    for (Mark& mark : piece.marks) {
        if (auto* line = std::get_if<LineMark>(&mark.what)) {
            for (Point& p : line->points) p = image(s, p);
        } else {
            std::get<DrillMark>(mark.what).at = image(s, std::get<DrillMark>(mark.what).at);
        }
    }
    return piece;
}

}  // namespace dartwright::testing
