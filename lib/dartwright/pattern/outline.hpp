#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// How a stretch of an edge is drawn from the end of the item before it.
struct StraightShape {
    friend bool operator==(const StraightShape&, const StraightShape&) = default;
};
struct CubicShape {
    std::array<Point, 2> controls;
    friend bool operator==(const CubicShape&, const CubicShape&) = default;
};
/// Measured points passed through, without the two ends.
struct SplineShape {
    std::vector<Point> through;
    friend bool operator==(const SplineShape&, const SplineShape&) = default;
};
using Shape = std::variant<StraightShape, CubicShape, SplineShape>;

/// A stretch of a named edge. Items of one name that follow each other (darts apart) are one run.
struct EdgeItem {
    std::string edge;
    Shape shape;
    double fullness = 0;  ///< mm gathered or eased away over this item, taken off its length evenly
    friend bool operator==(const EdgeItem&, const EdgeItem&) = default;
};

/// A dart: up one leg from the end of the item before (A) to the point (P), down the other to `to` (B).
struct DartItem {
    std::string name;
    Point point;
    std::optional<Point> pivot;      ///< where the shaping turns; the point if absent
    std::optional<double> back_off;  ///< least distance of point and pivot asked for, mm
    std::optional<std::array<std::array<Point, 2>, 2>> legs;  ///< controls of curved legs, A to P and P to B
    std::string press;  ///< the edge towards which it is pressed; empty if undecided
    /// A tuck is stitched so far along its legs from the mouth and released beyond, mm; a dart to its point.
    std::optional<double> stitched = std::nullopt;
    friend bool operator==(const DartItem&, const DartItem&) = default;
    Point turning_point() const { return pivot.value_or(point); }
};

struct OutlineItem {
    std::variant<EdgeItem, DartItem> what;
    Point to;
    friend bool operator==(const OutlineItem&, const OutlineItem&) = default;
    const EdgeItem* as_edge() const { return std::get_if<EdgeItem>(&what); }
    EdgeItem* as_edge() { return std::get_if<EdgeItem>(&what); }
    const DartItem* as_dart() const { return std::get_if<DartItem>(&what); }
    DartItem* as_dart() { return std::get_if<DartItem>(&what); }
};

/// The outline of a piece on the stitching line, anticlockwise; item i begins where item i - 1 ended, the
/// first at `start`, and the last ends at `start` again (to within the gap tolerance).
struct Outline {
    Point start;
    std::vector<OutlineItem> items;
    friend bool operator==(const Outline&, const Outline&) = default;
};

Point start_of_item(const Outline& outline, std::size_t index);

/// The curves of an edge item that begins at `start`: one for a line or a cubic, one a span for a spline.
std::vector<Curve> curves_of(const EdgeItem& item, Point start, Point end);
/// Same by index. Precondition: the item is an edge (std::invalid_argument).
std::vector<Curve> curves_of_item(const Outline& outline, std::size_t index);

/// The legs of a dart item: A to P and P to B.
struct Legs {
    Curve to_point;
    Curve from_point;
};
Legs legs_of_item(const Outline& outline, std::size_t index);

/// Geometric length of an edge item, and its sewn length (fullness taken off), mm.
double length_of_item(const Outline& outline, std::size_t index);
double sewn_length_of_item(const Outline& outline, std::size_t index);

/// How darts are drawn in a polygon of the outline.
enum class DartsDrawn {
    to_points,  ///< legs as they are, to the stitched point
    to_pivots   ///< straight from the mouth ends to the pivot
};
/// Flattening of the outline that remembers which item each side belongs to.
struct FlatOutline {
    std::vector<Point> points;              ///< closed polygon, the last joined to the first
    std::vector<std::size_t> item_of_side;  ///< item of the side that begins at points[i]
};
FlatOutline flat_outline(const Outline& outline, DartsDrawn darts, double chord_error_mm);

/// Distance from the last item's end to the start.
double gap_of(const Outline& outline);
/// The same outline with the last item ending exactly at the start, and no measured point of it there.
Outline with_gap_closed(Outline outline);
/// The outline walked the other way round, from the same start.
Outline reversed(const Outline& outline);
/// Positive area for anticlockwise outlines; darts drawn to their points. Exact up to rounding for lines
/// and cubics (Green's theorem).
double signed_area(const Outline& outline, DartsDrawn darts);

}  // namespace dartwright
