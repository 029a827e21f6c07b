#pragma once

// Questions answered slowly and plainly in rational arithmetic, as an outside check of the predicates.

#include <boost/multiprecision/cpp_int.hpp>
#include <vector>

#include "dartwright/geometry/predicates.hpp"

namespace dartwright::oracle {

using Number = boost::multiprecision::cpp_rational;

inline int turn(Point a, Point b, Point p) {
    const Number left = (Number(a.x) - Number(p.x)) * (Number(b.y) - Number(p.y));
    const Number right = (Number(a.y) - Number(p.y)) * (Number(b.x) - Number(p.x));
    return left > right ? 1 : left < right ? -1 : 0;
}

inline bool is_on(Point a, Point b, Point p) {
    return turn(a, b, p) == 0 && std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) &&
           std::min(a.y, b.y) <= p.y && p.y <= std::max(a.y, b.y);
}

inline bool do_meet(Point a, Point b, Point c, Point d) {
    if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
    return is_on(a, b, c) || is_on(a, b, d) || is_on(c, d, a) || is_on(c, d, b);
}

/// By the definition: sides that are not neighbours do not meet, neighbours meet only in their corner.
inline bool is_simple(const std::vector<Point>& p) {
    const std::size_t n = p.size();
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) {
            const Point a = p[i];
            const Point b = p[(i + 1) % n];
            const Point c = p[j];
            const Point d = p[(j + 1) % n];
            const bool is_next = j == i + 1;
            const bool is_last = (j + 1) % n == i;
            if (is_next && (is_on(a, b, d) || is_on(c, d, a))) return false;
            if (is_last && (is_on(a, b, c) || is_on(c, d, b))) return false;
            if (!is_next && !is_last && do_meet(a, b, c, d)) return false;
        }
    }
    return true;
}

inline bool is_boundary(const std::vector<Point>& p, Point q) {
    for (std::size_t i = 0; i < p.size(); ++i) {
        if (is_on(p[i], p[(i + 1) % p.size()], q)) return true;
    }
    return false;
}

/// Not for points of the boundary.
inline bool is_inside(const std::vector<Point>& p, Point q) {
    bool is_odd = false;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const Point a = p[i];
        const Point b = p[(i + 1) % p.size()];
        if ((a.y > q.y) == (b.y > q.y)) continue;
        const Number x = Number(a.x) + (Number(b.x) - Number(a.x)) * (Number(q.y) - Number(a.y)) /
                                           (Number(b.y) - Number(a.y));
        if (x > Number(q.x)) is_odd = !is_odd;
    }
    return is_odd;
}

/// Whether the open segment between two corners of a simple polygon lies inside: no side meets it other than
/// in a corner that is its own end, and its middle is inside. For coordinates of which halves are exact.
inline bool is_free(const std::vector<Point>& p, std::size_t from, std::size_t to) {
    const Point a = p[from];
    const Point b = p[to];
    for (std::size_t i = 0; i < p.size(); ++i) {
        const Point c = p[i];
        const Point d = p[(i + 1) % p.size()];
        for (const Point q : {c, d}) {
            if (!(q == a) && !(q == b) && is_on(a, b, q)) return false;
        }
        if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return false;
    }
    const Point centre = middle(a, b);
    return !is_boundary(p, centre) && is_inside(p, centre);
}

}  // namespace dartwright::oracle
