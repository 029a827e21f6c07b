#pragma once

// Private to this room: the exact sign of a turn, fast where rounding cannot matter.

#include <cmath>

#include "dartwright/geometry/predicates.hpp"

namespace dartwright::exact {

/// By exact arithmetic (CGAL); slow.
Side side_by_exact_arithmetic(Point a, Point b, Point p);

/// The side of the line from a to b on which p lies. The determinant in floating point has the right sign if
/// its modulus exceeds (3 + 16 u) u times the sum of the moduli of its two products, u = 2^-53 (Shewchuk
/// 1997, 'Adaptive precision floating-point arithmetic and fast robust geometric predicates', bound A), and
/// a little more for products that underflow. Overflow gives an infinity or NaN on the right and so leads to
/// exact arithmetic as well.
inline Side side_of_line(Point a, Point b, Point p) {
    constexpr double u = 1.1102230246251565e-16;
    constexpr double relative_bound = (3 + 16 * u) * u;
    constexpr double underflow_bound = 1e-300;
    const double left = (a.x - p.x) * (b.y - p.y);
    const double right = (a.y - p.y) * (b.x - p.x);
    const double determinant = left - right;
    const double bound = relative_bound * (std::abs(left) + std::abs(right)) + underflow_bound;
    if (determinant > bound) return Side::left;
    if (-determinant > bound) return Side::right;
    return side_by_exact_arithmetic(a, b, p);
}

}  // namespace dartwright::exact
