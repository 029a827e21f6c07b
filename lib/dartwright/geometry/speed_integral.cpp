#include "dartwright/geometry/speed_integral.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/gauss_rules.hpp"

namespace dartwright::speed {
namespace {

Vector times(Vector a, Vector b) {
    return {a.x * b.x - a.y * b.y, a.x * b.y + a.y * b.x};
}

Vector quotient(Vector a, Vector b) {
    return Vector{dot(a, b), cross(b, a)} / squared_norm(b);
}

// Everything below works with values near 1, so that the plain root of a sum of squares is safe.
double size(Vector a) {
    return std::sqrt(squared_norm(a));
}

double largest_part(Vector a) {
    return std::max(std::abs(a.x), std::abs(a.y));
}

// A bound of the modulus within a factor sqrt(2), without a root.
double size_bound(Vector a) {
    return std::abs(a.x) + std::abs(a.y);
}

Vector square_root(Vector a) {
    const double modulus = size(a);
    if (!(modulus > 0)) return {};
    const double larger = std::sqrt(0.5 * (modulus + std::abs(a.x)));
    const double smaller = 0.5 * a.y / larger;
    if (a.x >= 0) return {larger, smaller};
    return {std::abs(smaller), std::copysign(larger, a.y)};
}

using Legs = std::array<Vector, 3>;

Legs legs_of(const Cubic& c, double factor) {
    const auto scaled = [&](Point p) { return Point{factor * p.x, factor * p.y}; };
    return {3 * (scaled(c.p[1]) - scaled(c.p[0])), 3 * (scaled(c.p[2]) - scaled(c.p[1])),
            3 * (scaled(c.p[3]) - scaled(c.p[2]))};
}

double largest_part(const Legs& legs) {
    return std::max({largest_part(legs[0]), largest_part(legs[1]), largest_part(legs[2])});
}

struct ScaledLegs {
    Legs legs;
    double unit_mm = 1;
};

// Squares of squares are formed of the legs: outside this range they are first brought near 1, by a power of
// two so that nothing is rounded.
constexpr double least_safe_leg = 1e-60;
constexpr double greatest_safe_leg = 1e60;

ScaledLegs safe_legs(const Cubic& c) {
    const Legs plain = legs_of(c, 1);
    const double size = largest_part(plain);
    if ((least_safe_leg < size && size < greatest_safe_leg) || size == 0) return {plain, 1};
    // The differences themselves may overflow; a sixteenth of them cannot.
    constexpr double sixteenth = 0.0625;
    ScaledLegs out{legs_of(c, sixteenth), 1 / sixteenth};
    const double shrunk = largest_part(out.legs);
    if (!(shrunk > 0)) return {plain, 1};
    const int exponent = std::ilogb(shrunk);
    for (Vector& leg : out.legs) leg = {std::scalbn(leg.x, -exponent), std::scalbn(leg.y, -exponent)};
    out.unit_mm = std::scalbn(out.unit_mm, exponent);
    return out;
}

// A root this much farther away than the curve is long cannot be told from one at infinity.
constexpr double farthest_root = 1e12;

// Half the sum of the distances from both ends of the stretch, in half widths: the half axis sum of the
// ellipse with its foci at the ends that passes through the root; 1 on the stretch itself.
double ellipse_through(Vector root, Stretch s) {
    const Vector w{root.x - s.middle, root.y};
    const double h = s.half_width;
    return 0.5 * (size({w.x - h, w.y}) + size({w.x + h, w.y})) / h;
}

// Beyond this ellipse the shortest rule is exact to rounding, and the bound of the integrand would only grow.
constexpr double largest_ellipse = 4;

double smoothness(const Roots& roots, Stretch s) {
    double axis = largest_ellipse;
    for (std::size_t i = 0; i < roots.count; ++i) axis = std::min(axis, ellipse_through(roots.places[i], s));
    return axis;
}

// What the error bound of a rule of n points is made of: factor * decay^n, for the integral over [-1, 1].
struct ErrorBound {
    double factor = 0;
    double decay = 1;
};

ErrorBound error_bound(const Quadratic& z, double axis) {
    const double rho = axis + std::sqrt(std::max(0.0, axis * axis - 1));
    const double decay = 1 / (rho * rho);
    const double greatest = size_bound(z.c0) + axis * (size_bound(z.c1) + axis * size_bound(z.c2));
    return {(64.0 / 15.0) * greatest / (1 - decay), decay};
}

template <std::size_t pairs>
double integral(const Quadratic& z, const GaussRule<pairs>& rule) {
    std::array<double, pairs> values;
    for (std::size_t i = 0; i < pairs; ++i) {
        const double x = rule.nodes[i];
        const double even_x = z.c0.x + x * x * z.c2.x;
        const double even_y = z.c0.y + x * x * z.c2.y;
        const double odd_x = x * z.c1.x;
        const double odd_y = x * z.c1.y;
        const double plus =
            std::sqrt((even_x + odd_x) * (even_x + odd_x) + (even_y + odd_y) * (even_y + odd_y));
        const double minus =
            std::sqrt((even_x - odd_x) * (even_x - odd_x) + (even_y - odd_y) * (even_y - odd_y));
        values[i] = rule.weights[i] * (plus + minus);
    }
    double sum = 0;
    for (const double value : values) sum += value;
    return sum;
}

constexpr int no_rule = 0;

// The least number of points whose bound is at most `allowed`, or no_rule.
int points_needed(ErrorBound bound, double allowed) {
    const double ratio = allowed / bound.factor;
    const double decay_2 = bound.decay * bound.decay;
    const double decay_4 = decay_2 * decay_2;
    const double decay_8 = decay_4 * decay_4;
    const double decay_16 = decay_8 * decay_8;
    if (decay_8 <= ratio) return 8;
    if (decay_8 * decay_4 <= ratio) return 12;
    if (decay_16 <= ratio) return 16;
    if (decay_16 * decay_8 <= ratio) return 24;
    if (decay_16 * decay_16 <= ratio) return 32;
    return no_rule;
}

double integral(const Quadratic& z, int points) {
    switch (points) {
        case 8:
            return integral(z, rule_8);
        case 12:
            return integral(z, rule_12);
        case 16:
            return integral(z, rule_16);
        case 24:
            return integral(z, rule_24);
        default:
            return integral(z, rule_32);
    }
}

// An ellipse is free of roots if the middle value outweighs the rest on it; then they need not be computed.
struct QuickEllipse {
    double axis;
    double decay;  // 1 / rho^2
};
constexpr std::array<QuickEllipse, 3> quick_ellipses{
    {{2, 0.071796769724490839}, {1.5, 0.14589803375031546}, {1.15, 0.33885108046593721}}};

int points_without_roots(const Quadratic& z, double allowed) {
    const double c0 = size(z.c0);
    const double c1 = size(z.c1);
    const double c2 = size(z.c2);
    for (const auto& [axis, decay] : quick_ellipses) {
        const double rest = axis * (c1 + axis * c2);
        if (rest < c0) return points_needed({(64.0 / 15.0) * (c0 + rest) / (1 - decay), decay}, allowed);
    }
    return no_rule;
}

// How the tolerance is shared out: half of it to the stretches that a rule integrates, in proportion to their
// widths; half to the stretches dropped beside a root, of which there are at most six (two for each of the
// at most three stretches between roots).
//
// A tolerance this far below the unit is lost in rounding and would only reach the end of a double's range.
constexpr double least_tolerance = 1e-200;

struct Shares {
    double per_half_width = 0;
    double dropped = 0;
};

Shares shares_of(double tolerance, double half_width) {
    // Over s instead of t integrals are twice as large.
    return {0.5 * 2 * tolerance / half_width, 0.5 * 2 * tolerance / 6};
}

// Each cut takes eleven twelfths of the stretch away from the root. Seen from the part taken away, the root
// then lies on or outside the ellipse of axis 13/11 (rho = 1.81), where 32 points are always enough.
constexpr double part_near_root = 1.0 / 12.0;
constexpr double axis_after_cut = 13.0 / 11.0;
constexpr double decay_after_cut = 0.30468360341187396;

double place_near(Vector root, Stretch s) {
    const double side = root.x <= s.middle ? -1 : 1;
    return s.middle + side * s.half_width * (1 - 2 * part_near_root);
}

Vector worst_root(const Roots& roots, Stretch s) {
    if (roots.count == 1) return roots.places[0];
    const bool is_first = ellipse_through(roots.places[0], s) <= ellipse_through(roots.places[1], s);
    return roots.places[is_first ? 0 : 1];
}

bool is_cut_on_both_sides(const Roots& roots, Stretch s) {
    return roots.count == 2 && (roots.places[0].x <= s.middle) != (roots.places[1].x <= s.middle) &&
           ellipse_through(roots.places[0], s) < axis_after_cut &&
           ellipse_through(roots.places[1], s) < axis_after_cut;
}

struct TwoStretches {
    Stretch before;
    Stretch after;
};

TwoStretches cut(Stretch s, double place) {
    const double low = s.middle - s.half_width;
    const double high = s.middle + s.half_width;
    return {{0.5 * (low + place), 0.5 * (place - low)}, {0.5 * (place + high), 0.5 * (high - place)}};
}

double integral_after_cut(const Quadratic& z, double half_width, double allowed) {
    const double greatest =
        size_bound(z.c0) + axis_after_cut * (size_bound(z.c1) + axis_after_cut * size_bound(z.c2));
    const ErrorBound bound{(64.0 / 15.0) * greatest / (1 - decay_after_cut), decay_after_cut};
    return half_width * integral(z, points_needed(bound, allowed));
}

// Over a stretch that has no near root's real part inside.
double integral_beside_roots(const Hodograph& h, const Roots& roots, Stretch s, Shares shares) {
    double sum = 0;
    while (true) {
        const Quadratic z = local(h, s);
        const int points = points_needed(error_bound(z, smoothness(roots, s)), shares.per_half_width);
        if (points != no_rule) return sum + s.half_width * integral(z, points);
        const double greatest = size_bound(z.c0) + size_bound(z.c1) + size_bound(z.c2);
        // Both the integral and the rule's value lie between 0 and this.
        if (2 * s.half_width * greatest <= shares.dropped) return sum + s.half_width * integral(z, rule_8);
        if (is_cut_on_both_sides(roots, s)) {
            const TwoStretches parts = cut(s, s.middle);
            return sum + integral_beside_roots(h, roots, parts.before, shares) +
                   integral_beside_roots(h, roots, parts.after, shares);
        }
        const Vector root = worst_root(roots, s);
        const TwoStretches parts = cut(s, place_near(root, s));
        const bool is_root_before = root.x <= s.middle;
        const Stretch away = is_root_before ? parts.after : parts.before;
        sum += integral_after_cut(local(h, away), away.half_width, shares.per_half_width);
        s = is_root_before ? parts.before : parts.after;
    }
}

// The real parts of the roots near the stretch, if inside it, in order; then its end.
struct Breaks {
    std::array<double, 3> places;
    std::size_t count = 0;
};

Breaks breaks_in(const Roots& roots, Stretch s) {
    Breaks out;
    for (std::size_t i = 0; i < roots.count; ++i) {
        const Vector root = roots.places[i];
        const bool is_inside = std::abs(root.x - s.middle) < s.half_width;
        if (is_inside && ellipse_through(root, s) < axis_after_cut) out.places[out.count++] = root.x;
    }
    if (out.count == 2 && out.places[0] > out.places[1]) std::swap(out.places[0], out.places[1]);
    out.places[out.count++] = s.middle + s.half_width;
    return out;
}

double integral_between_roots(const Hodograph& h, const Roots& roots, Stretch s, Shares shares) {
    const Breaks breaks = breaks_in(roots, s);
    double sum = 0;
    double from = s.middle - s.half_width;
    for (std::size_t i = 0; i < breaks.count; ++i) {
        const double to = breaks.places[i];
        if (to > from) sum += integral_beside_roots(h, roots, {0.5 * (from + to), 0.5 * (to - from)}, shares);
        from = to;
    }
    return sum;
}

}  // namespace

Hodograph hodograph_of(const Cubic& cubic) {
    const auto [legs, unit_mm] = safe_legs(cubic);
    Hodograph h;
    h.z = {0.25 * (legs[0] + 2 * legs[1] + legs[2]), 0.5 * (legs[2] - legs[0]),
           0.25 * ((legs[0] - legs[1]) + (legs[2] - legs[1]))};
    h.unit_mm = unit_mm;
    return h;
}

Roots roots_of(const Hodograph& h) {
    const auto& [c0, c1, c2] = h.z;
    Roots roots;
    const Vector root = square_root(times(c1, c1) - 4 * times(c2, c0));
    // Of the two signs the one that does not cancel.
    const Vector q = -0.5 * (dot(c1, root) >= 0 ? c1 + root : c1 - root);
    const double q_size = size_bound(q);
    if (q_size < farthest_root * size_bound(c2)) roots.places[roots.count++] = quotient(q, c2);
    if (q_size > 0 && size_bound(c0) < farthest_root * q_size) roots.places[roots.count++] = quotient(c0, q);
    // c1 = 0 and c0 = 0: both roots at the middle.
    if (q_size == 0 && roots.count == 1) roots.places[roots.count++] = roots.places[0];
    return roots;
}

Quadratic local(const Hodograph& h, Stretch s) {
    const auto& [c0, c1, c2] = h.z;
    return {c0 + s.middle * (c1 + s.middle * c2), s.half_width * (c1 + 2 * s.middle * c2),
            s.half_width * s.half_width * c2};
}

// The length is at least the modulus of the integral of the derivative times any weight within [-1, 1]; the
// weights used are the first three Legendre polynomials. A modulus is at least its larger part.
double least_length(const Hodograph& h, Stretch s) {
    const Quadratic z = local(h, s);
    const Vector mean = z.c0 + z.c2 / 3;
    return s.half_width *
           std::max({largest_part(mean), largest_part(z.c1) / 3, largest_part(z.c2) * (2.0 / 15.0)});
}

double length_over(const Hodograph& h, Stretch s, double tolerance) {
    if (!(s.half_width > 0)) return 0;
    const Quadratic z = local(h, s);
    const Shares shares = shares_of(std::max(tolerance, least_tolerance), s.half_width);
    int points = points_without_roots(z, shares.per_half_width);
    if (points != no_rule) return 0.5 * s.half_width * integral(z, points);
    const Roots roots = roots_of(h);
    const ErrorBound bound = error_bound(z, smoothness(roots, s));
    // A curve that is one point has the bound 0.
    if (bound.factor == 0) return 0;
    points = points_needed(bound, shares.per_half_width);
    if (points != no_rule) return 0.5 * s.half_width * integral(z, points);
    return 0.5 * integral_between_roots(h, roots, s, shares);
}

bool is_short_rule_enough(const Hodograph& h, const Roots& roots, Stretch s, double tolerance) {
    const Quadratic z = local(h, s);
    const double allowed = 2 * tolerance / s.half_width;
    if (points_without_roots(z, allowed) == 8) return true;
    const ErrorBound bound = error_bound(z, smoothness(roots, s));
    return bound.factor == 0 || points_needed(bound, allowed) == 8;
}

double short_rule_length(const Hodograph& h, Stretch s) {
    return 0.5 * s.half_width * integral(local(h, s), rule_8);
}

double cutting_place(const Roots& roots, Stretch s) {
    if (roots.count == 0) return s.middle;
    const Vector root = worst_root(roots, s);
    const double from_middle = std::abs(root.x - s.middle) / s.half_width;
    // Well inside: there. At or beyond an end: towards it. Otherwise the middle does.
    if (from_middle < 0.9) return root.x;
    return ellipse_through(root, s) < axis_after_cut ? place_near(root, s) : s.middle;
}

double greatest_speed(const Hodograph& h, Stretch s) {
    const Quadratic z = local(h, s);
    return size(z.c0) + size(z.c1) + size(z.c2);
}

}  // namespace dartwright::speed
