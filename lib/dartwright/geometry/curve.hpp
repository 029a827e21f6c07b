#pragma once

#include <array>
#include <optional>
#include <variant>

#include "dartwright/geometry/motion.hpp"
#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// A straight stretch from a to b; its parameter runs evenly from 0 to 1.
struct Line {
    Point a;
    Point b;
    friend constexpr bool operator==(const Line&, const Line&) = default;
};

/// A cubic Bezier curve with control points p[0] to p[3]; any of them may coincide.
struct Cubic {
    std::array<Point, 4> p;
    friend constexpr bool operator==(const Cubic&, const Cubic&) = default;
};

/// A stretch of an outline. All questions below are O(1) unless they say otherwise.
using Curve = std::variant<Line, Cubic>;

Point start_of(const Curve& curve);
Point end_of(const Curve& curve);
/// The point at parameter t in [0, 1]; the ends are given exactly.
Point point_at(const Curve& curve, double t);
/// The derivative by the parameter.
Vector derivative_at(const Curve& curve, double t);
/// The unit tangent in the walking direction at an end, also where one or two control points coincide with
/// that end: then the next one that differs gives the direction. Zero if the whole curve is one point.
Vector tangent_at_start(const Curve& curve);
Vector tangent_at_end(const Curve& curve);
/// Unit tangent inside; falls back to the one-sided limit at a cusp (the side before it).
Vector tangent_at(const Curve& curve, double t);

/// The same stretch walked the other way.
Curve reversed(const Curve& curve);
/// The image under a rigid motion (control points are moved, so the image is exact to rounding).
Curve moved(const Curve& curve, const Motion& motion);

struct CurveHalves {
    Curve before;
    Curve after;
};
/// The two parts at parameter t in [0, 1] (de Casteljau); the parts share their joint to the last bit.
CurveHalves split_at(const Curve& curve, double t);
/// The part between two parameters, 0 <= from <= to <= 1.
Curve part_between(const Curve& curve, double from, double to);

/// A curve with its ends put where told; control points next to an end move with it, so that tangents at
/// the ends stay as they are. Used to close gaps of rounding size.
struct NewEnds {
    Point start;
    Point end;
};
Curve with_ends(const Curve& curve, NewEnds ends);

/// The one curve of which `first` and `second` are adjacent parts, if there is one to `tolerance_mm`:
/// collinear lines, or the two parts of one cubic. Empty if there is none.
std::optional<Curve> joined(const Curve& first, const Curve& second, double tolerance_mm);

struct Box {
    Point low;
    Point high;
};
/// A box that holds the curve: the hull of its control points (not the tightest).
Box bounds(const Curve& curve);
Box joined(const Box& a, const Box& b);

}  // namespace dartwright
