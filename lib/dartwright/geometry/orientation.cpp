#include "dartwright/geometry/orientation.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>

namespace dartwright::exact {

Side side_by_exact_arithmetic(Point a, Point b, Point p) {
    using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
    // Common on purpose-built outlines, and exact without arithmetic.
    if (a == b || a == p || b == p) return Side::on;
    if ((a.x == b.x && b.x == p.x) || (a.y == b.y && b.y == p.y)) return Side::on;
    const auto turn =
        CGAL::orientation(Kernel::Point_2(a.x, a.y), Kernel::Point_2(b.x, b.y), Kernel::Point_2(p.x, p.y));
    if (turn == CGAL::LEFT_TURN) return Side::left;
    return turn == CGAL::RIGHT_TURN ? Side::right : Side::on;
}

}  // namespace dartwright::exact
