#include "dartwright/geometry/closest.hpp"

#include <algorithm>
#include <array>

namespace dartwright {
namespace {

// Two places count as equally near when their distances differ by less than this (mm); then the first wins.
// Below the promised 1e-9 mm, above the rounding of a distance on a garment (1e-13 mm).
constexpr double equally_near_mm = 1e-10;

ClosestPoint at_parameter(const Curve& curve, double t, Point p) {
    const Point place = point_at(curve, t);
    return {t, place, distance(place, p)};
}

// Keeps the nearest place seen so far; places are offered in the order of their parameters.
class Nearest {
  public:
    Nearest(const Curve& curve, Point p) : curve_(curve), p_(p), best_(at_parameter(curve, 0, p)) {}

    void offer(double t) {
        const ClosestPoint candidate = at_parameter(curve_, t, p_);
        if (candidate.distance < best_.distance - equally_near_mm) best_ = candidate;
    }
    // Half the derivative of the squared distance.
    double slope(double t) const { return dot(point_at(curve_, t) - p_, derivative_at(curve_, t)); }
    const ClosestPoint& best() const { return best_; }

  private:
    const Curve& curve_;
    Point p_;
    ClosestPoint best_;
};

// Half the derivative of the squared distance is a polynomial of degree five; this is its Bernstein form.
using Quintic = std::array<double, 6>;

Quintic slope_form(const Cubic& c, Point p) {
    constexpr std::array<double, 4> choose_3{1, 3, 3, 1};
    constexpr std::array<double, 3> choose_2{1, 2, 1};
    constexpr std::array<double, 6> choose_5{1, 5, 10, 10, 5, 1};
    Quintic out{};
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t j = 0; j < 3; ++j) {
            const double product = dot(c.p[i] - p, 3 * (c.p[j + 1] - c.p[j]));
            out[i + j] += choose_3[i] * choose_2[j] / choose_5[i + j] * product;
        }
    }
    return out;
}

struct QuinticHalves {
    Quintic before;
    Quintic after;
};

QuinticHalves halves(Quintic q) {
    QuinticHalves out{};
    for (std::size_t level = 0; level < 6; ++level) {
        out.before[level] = q[0];
        out.after[5 - level] = q[5 - level];
        for (std::size_t i = 0; i + level < 5; ++i) q[i] = 0.5 * (q[i] + q[i + 1]);
    }
    return out;
}

std::size_t sign_changes(const Quintic& q) {
    std::size_t changes = 0;
    double last = 0;
    for (const double value : q) {
        if (value == 0) continue;
        if (last * value < 0) ++changes;
        last = value > 0 ? 1 : -1;
    }
    return changes;
}

double largest(const Quintic& q) {
    double out = 0;
    for (const double value : q) out = std::max(out, std::abs(value));
    return out;
}

struct Span {
    double from = 0;
    double to = 1;
};

// The sign of the slope just before the end of its span.
bool is_rising_at_end(const Quintic& q) {
    return *std::find_if(q.rbegin(), q.rend(), [](double value) { return value != 0; }) > 0;
}

// Halves a span in which the slope changes its sign once, until no double lies between.
double turning_place(const Nearest& nearest, Span span, bool is_rising) {
    while (true) {
        const double t = 0.5 * (span.from + span.to);
        if (!(span.from < t && t < span.to)) return t;
        if ((nearest.slope(t) > 0) == is_rising) {
            span.to = t;
        } else {
            span.from = t;
        }
    }
}

// The distance over the span differs from that at its start by so little that it need not be looked at:
// the squared distance changes by at most twice the greatest slope times the width.
bool is_flat(const Quintic& slope, Span span, double distance_at_start) {
    const double change = 2 * largest(slope) * (span.to - span.from);
    return change <= equally_near_mm * std::max(equally_near_mm, distance_at_start);
}

void search(Nearest& nearest, const Curve& curve, Point p, const Quintic& slope, Span span) {
    const std::size_t changes = sign_changes(slope);
    if (changes == 0 || is_flat(slope, span, distance(point_at(curve, span.from), p))) {
        nearest.offer(span.to);
        return;
    }
    const double middle = 0.5 * (span.from + span.to);
    if (changes == 1 || !(span.from < middle && middle < span.to)) {
        nearest.offer(turning_place(nearest, span, is_rising_at_end(slope)));
        nearest.offer(span.to);
        return;
    }
    const QuinticHalves parts = halves(slope);
    search(nearest, curve, p, parts.before, {span.from, middle});
    search(nearest, curve, p, parts.after, {middle, span.to});
}

ClosestPoint closest_on_line(const Curve& curve, const Line& line, Point p) {
    const Vector along = line.b - line.a;
    const double length = norm(along);
    if (!(length > 0)) return at_parameter(curve, 0, p);
    return at_parameter(curve, std::clamp(dot(p - line.a, along / length) / length, 0.0, 1.0), p);
}

}  // namespace

ClosestPoint closest_point(const Curve& curve, Point p) {
    if (const auto* line = std::get_if<Line>(&curve)) return closest_on_line(curve, *line, p);
    Nearest nearest(curve, p);
    search(nearest, curve, p, slope_form(std::get<Cubic>(curve), p), {});
    return nearest.best();
}

}  // namespace dartwright
