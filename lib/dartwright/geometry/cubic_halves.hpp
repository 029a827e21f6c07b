#pragma once

// Private to the library: what is asked of a cubic so often that it is worth its own words, without the
// choice between the kinds of curves.

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

struct CubicHalves {
    Cubic before;
    Cubic after;
};
/// `split_at` of a cubic.
inline CubicHalves split_cubic(const Cubic& c, double t) {
    const Point a = between(c.p[0], c.p[1], t);
    const Point b = between(c.p[1], c.p[2], t);
    const Point d = between(c.p[2], c.p[3], t);
    const Point ab = between(a, b, t);
    const Point bd = between(b, d, t);
    const Point joint = between(ab, bd, t);
    return {Cubic{{c.p[0], a, ab, joint}}, Cubic{{joint, bd, d, c.p[3]}}};
}

/// `tangent_at_start` of a cubic.
inline Vector first_direction(const Cubic& c) {
    for (std::size_t i = 1; i < 4; ++i) {
        if (!(c.p[i] == c.p[0])) return unit(c.p[i] - c.p[0]);
    }
    return {};
}
/// `tangent_at_end` of a cubic.
inline Vector last_direction(const Cubic& c) {
    return -first_direction({{c.p[3], c.p[2], c.p[1], c.p[0]}});
}

}  // namespace dartwright
