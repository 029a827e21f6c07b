#include "dartwright/geometry/curve.hpp"

#include <algorithm>

#include "dartwright/geometry/cubic_halves.hpp"

namespace dartwright {
namespace {

Vector cubic_derivative(const Cubic& c, double t) {
    const double s = 1 - t;
    return 3 * (s * s * (c.p[1] - c.p[0]) + 2 * s * t * (c.p[2] - c.p[1]) + t * t * (c.p[3] - c.p[2]));
}

Cubic reversed_cubic(const Cubic& c) {
    return {{c.p[3], c.p[2], c.p[1], c.p[0]}};
}

bool are_near(const Cubic& a, const Cubic& b, double tolerance) {
    for (std::size_t i = 0; i < 4; ++i) {
        if (distance(a.p[i], b.p[i]) > tolerance) return false;
    }
    return true;
}

std::optional<Curve> joined_lines(const Line& first, const Line& second, double tolerance) {
    const Vector along = second.b - first.a;
    const double length = norm(along);
    if (!(length > 0)) return {};
    const Vector to_joint = first.b - first.a;
    const bool is_between = dot(to_joint, along) >= 0 && dot(second.b - first.b, along) >= 0;
    if (!is_between || std::abs(cross(along, to_joint)) > tolerance * length) return {};
    return Line{first.a, second.b};
}

// Inverts de Casteljau: the joint divides the tangent there in the ratio t : 1 - t.
std::optional<Curve> joined_cubics(const Cubic& first, const Cubic& second, double tolerance) {
    const double before = distance(first.p[2], first.p[3]);
    const double after = distance(second.p[0], second.p[1]);
    if (!(before > 0) || !(after > 0)) return {};
    const double t = before / (before + after);
    const Cubic whole{{first.p[0], first.p[0] + (first.p[1] - first.p[0]) / t,
                       second.p[3] + (second.p[2] - second.p[3]) / (1 - t), second.p[3]}};
    const CubicHalves halves = split_cubic(whole, t);
    if (!are_near(halves.before, first, tolerance) || !are_near(halves.after, second, tolerance)) return {};
    return whole;
}

// A derivative below this share of the control polygon's longest leg has lost its direction to rounding: at a
// cusp, or at an end with two controls in one place.
constexpr double slow_share = 1e-9;

double greatest_leg(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) return distance(line->a, line->b);
    const Cubic& c = std::get<Cubic>(curve);
    return std::max({distance(c.p[0], c.p[1]), distance(c.p[1], c.p[2]), distance(c.p[2], c.p[3])});
}

}  // namespace

Point start_of(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) return line->a;
    return std::get<Cubic>(curve).p[0];
}

Point end_of(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) return line->b;
    return std::get<Cubic>(curve).p[3];
}

Point point_at(const Curve& curve, double t) {
    if (const auto* line = std::get_if<Line>(&curve)) return between(line->a, line->b, t);
    const Cubic& c = std::get<Cubic>(curve);
    if (t == 0) return c.p[0];
    if (t == 1) return c.p[3];
    const double s = 1 - t;
    const double w0 = s * s * s;
    const double w1 = 3 * s * s * t;
    const double w2 = 3 * s * t * t;
    const double w3 = t * t * t;
    return {w0 * c.p[0].x + w1 * c.p[1].x + w2 * c.p[2].x + w3 * c.p[3].x,
            w0 * c.p[0].y + w1 * c.p[1].y + w2 * c.p[2].y + w3 * c.p[3].y};
}

Vector derivative_at(const Curve& curve, double t) {
    if (const auto* line = std::get_if<Line>(&curve)) return line->b - line->a;
    return cubic_derivative(std::get<Cubic>(curve), t);
}

Vector tangent_at_start(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) return unit(line->b - line->a);
    return first_direction(std::get<Cubic>(curve));
}

Vector tangent_at_end(const Curve& curve) {
    return -tangent_at_start(reversed(curve));
}

Vector tangent_at(const Curve& curve, double t) {
    const Vector along = derivative_at(curve, t);
    if (norm(along) > slow_share * greatest_leg(curve)) return unit(along);
    // Beside an end the limit is the end's; a part that short would be split off as rounding.
    constexpr double at_end = 1e-6;
    if (t <= at_end) return tangent_at_start(curve);
    return tangent_at_end(split_at(curve, t).before);
}

Curve reversed(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) return Line{line->b, line->a};
    return reversed_cubic(std::get<Cubic>(curve));
}

Curve moved(const Curve& curve, const Motion& motion) {
    if (const auto* line = std::get_if<Line>(&curve)) {
        return Line{apply(motion, line->a), apply(motion, line->b)};
    }
    Cubic c = std::get<Cubic>(curve);
    for (Point& p : c.p) p = apply(motion, p);
    return c;
}

CurveHalves split_at(const Curve& curve, double t) {
    if (const auto* line = std::get_if<Line>(&curve)) {
        const Point joint = between(line->a, line->b, t);
        return {Line{line->a, joint}, Line{joint, line->b}};
    }
    const CubicHalves halves = split_cubic(std::get<Cubic>(curve), t);
    return {halves.before, halves.after};
}

Curve part_between(const Curve& curve, double from, double to) {
    const Curve head = to >= 1 ? curve : split_at(curve, to).before;
    if (from <= 0) return head;
    return split_at(head, from / to).after;
}

Curve with_ends(const Curve& curve, NewEnds ends) {
    if (std::holds_alternative<Line>(curve)) return Line{ends.start, ends.end};
    Cubic c = std::get<Cubic>(curve);
    c.p[1] = c.p[1] + (ends.start - c.p[0]);
    c.p[2] = c.p[2] + (ends.end - c.p[3]);
    c.p[0] = ends.start;
    c.p[3] = ends.end;
    return c;
}

std::optional<Curve> joined(const Curve& first, const Curve& second, double tolerance_mm) {
    if (distance(end_of(first), start_of(second)) > tolerance_mm) return {};
    const auto* first_line = std::get_if<Line>(&first);
    const auto* second_line = std::get_if<Line>(&second);
    if (first_line && second_line) return joined_lines(*first_line, *second_line, tolerance_mm);
    if (first_line || second_line) return {};
    return joined_cubics(std::get<Cubic>(first), std::get<Cubic>(second), tolerance_mm);
}

Box bounds(const Curve& curve) {
    if (const auto* line = std::get_if<Line>(&curve)) {
        return {{std::min(line->a.x, line->b.x), std::min(line->a.y, line->b.y)},
                {std::max(line->a.x, line->b.x), std::max(line->a.y, line->b.y)}};
    }
    const auto& p = std::get<Cubic>(curve).p;
    const auto [x_low, x_high] = std::minmax({p[0].x, p[1].x, p[2].x, p[3].x});
    const auto [y_low, y_high] = std::minmax({p[0].y, p[1].y, p[2].y, p[3].y});
    return {{x_low, y_low}, {x_high, y_high}};
}

Box joined(const Box& a, const Box& b) {
    return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
            {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

}  // namespace dartwright
