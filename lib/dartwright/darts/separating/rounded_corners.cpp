#include "dartwright/darts/separating/rounded_corners.hpp"

#include <cmath>

#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/elementary.hpp"

namespace dartwright {
namespace {

Cubic curve_of(const StraightCorner& corner, double span_mm, double handle) {
    const Point from = corner.corner - span_mm * corner.in;
    const Point to = corner.corner + span_mm * corner.out;
    return {{from, from + handle * span_mm * corner.in, to - handle * span_mm * corner.out, to}};
}

// The handle, as a share of the span, with which a cubic comes nearest to an arc of a circle.
double arc_handle(double turn) {
    // Below this the quotient is its limit to the last bit but one.
    constexpr double nearly_straight = 1e-6;
    if (turn < nearly_straight) return 2.0 / 3;
    return 4.0 / 3 * tangent_of(turn / 4) / tangent_of(turn / 2);
}

// With this handle the curve is longer than its two legs for every turn under 150 degrees.
constexpr double fullest_handle = 1.4;

// The curve grows with its handle, so that halving finds the one of the length wanted.
double handle_for(const StraightCorner& corner, double span_mm, double length_mm) {
    double low = arc_handle(turn_at(corner));
    double high = fullest_handle;
    for (int step = 0; step < 60; ++step) {
        const double between = (low + high) / 2;
        if (length(curve_of(corner, span_mm, between)) < length_mm) {
            low = between;
        } else {
            high = between;
        }
    }
    return high;
}

}  // namespace

double turn_at(const StraightCorner& corner) {
    return std::abs(angle_from(corner.in, corner.out));
}

RoundedCorners rounded_corners(const StraightCorner& first, const StraightCorner& second, double span_mm) {
    const bool is_first_gentler = turn_at(first) <= turn_at(second);
    const StraightCorner& gentler = is_first_gentler ? first : second;
    const StraightCorner& sharper = is_first_gentler ? second : first;
    const Cubic arc = curve_of(gentler, span_mm, arc_handle(turn_at(gentler)));
    RoundedCorners out;
    out.length_mm = length(arc);
    const Cubic fuller = curve_of(sharper, span_mm, handle_for(sharper, span_mm, out.length_mm));
    out.curves = is_first_gentler ? std::array{arc, fuller} : std::array{fuller, arc};
    return out;
}

}  // namespace dartwright
