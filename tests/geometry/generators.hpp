#pragma once

// Generated shapes for the properties of this room. They shrink towards small whole numbers.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <vector>

#include "dartwright/geometry/curve.hpp"
#include "support/evenly.hpp"

namespace dartwright {

inline std::ostream& operator<<(std::ostream& out, Point p) {
    const auto precision = out.precision(17);
    out << '(' << p.x << ", " << p.y << ')';
    out.precision(precision);
    return out;
}
inline std::ostream& operator<<(std::ostream& out, const Cubic& c) {
    return out << '[' << c.p[0] << ' ' << c.p[1] << ' ' << c.p[2] << ' ' << c.p[3] << ']';
}

namespace generated {

/// A value in [low, high] in steps of a millionth of the range.
inline rc::Gen<double> real(double low, double high) {
    return rc::gen::map(testing::evenly(0, 1000001),
                        [low, high](int i) { return low + (high - low) * (i * 1e-6); });
}
/// A value of which the logarithm is spread evenly.
inline rc::Gen<double> log_uniform(double low, double high) {
    return rc::gen::map(real(std::log(low), std::log(high)), [](double x) { return std::exp(x); });
}
inline rc::Gen<Point> point(double size) {
    return rc::gen::map(rc::gen::pair(real(-size, size), real(-size, size)),
                        [](const std::pair<double, double>& p) {
                            return Point{p.first, p.second};
                        });
}
inline rc::Gen<Cubic> cubic(double size) {
    return rc::gen::map(rc::gen::container<std::vector<Point>>(4, point(size)),
                        [](const std::vector<Point>& p) {
                            return Cubic{{p[0], p[1], p[2], p[3]}};
                        });
}
inline rc::Gen<Turn> turn() {
    return rc::gen::map(real(-pi, pi), [](double angle) { return turn_by(angle); });
}
inline rc::Gen<Motion> motion(double size) {
    return rc::gen::map(rc::gen::pair(turn(), point(size)), [](const std::pair<Turn, Point>& m) {
        return Motion{m.first.cosine, m.first.sine, m.second - Point{}};
    });
}

/// The cubic (t^2, t^3) for t in [low, high], times `size`: an exact cusp at t = 0.
inline Cubic semicubical(double low, double high, double size) {
    // The blossom of t^2 is (uv + vw + wu) / 3 and that of t^3 is uvw.
    const auto control = [size](double u, double v, double w) {
        return Point{size * (u * v + v * w + w * u) / 3, size * u * v * w};
    };
    return {{control(low, low, low), control(low, low, high), control(low, high, high),
             control(high, high, high)}};
}

/// A cubic with a cusp somewhere, of which the inner control points are then moved by 1e-12 to 1 of its size.
inline rc::Gen<Cubic> near_cusp(double size) {
    const auto offset = rc::gen::pair(turn(), log_uniform(1e-12, 1));
    return rc::gen::map(rc::gen::tuple(real(-2, -0.01), real(0.01, 2), offset, offset, motion(size)),
                        [size](const auto& parts) {
                            Cubic c = semicubical(std::get<0>(parts), std::get<1>(parts), size);
                            const auto moved_by = [size](Point p, const std::pair<Turn, double>& o) {
                                return p + size * o.second * Vector{o.first.cosine, o.first.sine};
                            };
                            c.p[1] = moved_by(c.p[1], std::get<2>(parts));
                            c.p[2] = moved_by(c.p[2], std::get<3>(parts));
                            return std::get<Cubic>(moved(c, std::get<4>(parts)));
                        });
}

/// Garment sizes, and from a doll's to a cloak's and beyond.
inline rc::Gen<double> size() {
    return log_uniform(1e-6, 1e4);
}

}  // namespace generated
}  // namespace dartwright
