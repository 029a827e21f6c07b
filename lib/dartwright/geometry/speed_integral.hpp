#pragma once

// Private to this room: the integral of a cubic's speed, with an error bound known before it is evaluated.
// The method and its proof are in docs/notes/arc-length.md.

#include <array>
#include <cmath>
#include <cstddef>

#include "dartwright/geometry/curve.hpp"

namespace dartwright::speed {

/// A complex quadratic c0 + c1 s + c2 s^2 on a stretch of the curve that s in [-1, 1] runs over.
struct Quadratic {
    Vector c0;
    Vector c1;
    Vector c2;
};

/// The derivative of a cubic by its parameter, as a quadratic over the whole curve (t = (1 + s) / 2). Lengths
/// are to be multiplied by `unit_mm`: 1 unless the coordinates are so large or small that their squares would
/// leave the range of a double.
struct Hodograph {
    Quadratic z;
    double unit_mm = 1;
};
Hodograph hodograph_of(const Cubic& cubic);

/// The roots of the quadratic as complex numbers of the s plane; those at infinity are left out.
struct Roots {
    std::array<Vector, 2> places;
    std::size_t count = 0;
};
Roots roots_of(const Hodograph& hodograph);

/// A stretch of parameters, as middle and half width in s.
struct Stretch {
    double middle = 0;
    double half_width = 1;
};
constexpr Stretch stretch_between(double from, double to) {
    return {from + to - 1, to - from};
}

/// The hodograph over the stretch alone.
Quadratic local(const Hodograph& hodograph, Stretch stretch);

/// A lower bound of the length over the stretch, never less than 1/13 of the greatest speed times the width;
/// zero only where the derivative vanishes on the whole stretch.
double least_length(const Hodograph& hodograph, Stretch stretch);

/// The length over the stretch in `unit_mm`, with an absolute error of at most `tolerance` (same unit) and
/// rounding. Precondition: tolerance >= 1e-13 times least_length over the stretch.
double length_over(const Hodograph& hodograph, Stretch stretch, double tolerance);

/// Whether the rule of eight points is good to `tolerance` on the stretch, and so on every part of it.
bool is_short_rule_enough(const Hodograph& hodograph, const Roots& roots, Stretch stretch, double tolerance);
/// The rule of eight points.
double short_rule_length(const Hodograph& hodograph, Stretch stretch);

/// Where to cut a stretch that needs cutting, as s.
double cutting_place(const Roots& roots, Stretch stretch);

/// The speed by t at one place.
inline double speed_at(const Hodograph& hodograph, double t) {
    const double s = 2 * t - 1;
    // Safe without the care of a hypot, because the hodograph's unit keeps squares in range.
    return std::sqrt(squared_norm(hodograph.z.c0 + s * (hodograph.z.c1 + s * hodograph.z.c2)));
}

/// A bound of the speed (by t) over the stretch.
double greatest_speed(const Hodograph& hodograph, Stretch stretch);

}  // namespace dartwright::speed
