#pragma once

// Private to this room: the exact sign of a turn, fast where rounding cannot matter.

#include <cmath>

#include "dartwright/geometry/predicates.hpp"

namespace dartwright::exact {

/// By exact arithmetic (CGAL); slow.
Side side_by_exact_arithmetic(Point a, Point b, Point p);

/// The determinant of a turn in floating point. It has the right sign if its modulus exceeds (3 + 16 u) u
/// times the sum of the moduli of its two products, u = 2^-53 (Shewchuk 1997, 'Adaptive precision
/// floating-point arithmetic and fast robust geometric predicates', bound A), and a little more for products
/// that underflow. Overflow gives an infinity or NaN on the right, and so is not sure either.
struct Turn {
    double determinant = 0;
    double bound = 0;
    bool is_sure() const { return std::abs(determinant) > bound; }
    bool is_left() const { return determinant > 0; }  ///< right if it is sure
};
inline Turn turn(Point a, Point b, Point p) {
    constexpr double u = 1.1102230246251565e-16;
    constexpr double relative_bound = (3 + 16 * u) * u;
    constexpr double underflow_bound = 1e-300;
    const double left = (a.x - p.x) * (b.y - p.y);
    const double right = (a.y - p.y) * (b.x - p.x);
    return {left - right, relative_bound * (std::abs(left) + std::abs(right)) + underflow_bound};
}

/// The side of the line from a to b on which p lies.
inline Side side_of_line(Point a, Point b, Point p) {
    const Turn quick = turn(a, b, p);
    if (quick.determinant > quick.bound) return Side::left;
    if (-quick.determinant > quick.bound) return Side::right;
    return side_by_exact_arithmetic(a, b, p);
}

}  // namespace dartwright::exact
