#pragma once

// The length by adaptive quadrature in long double (Boost.Math), as an outside check.

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <complex>
#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

inline long double speed_by_oracle(const Cubic& c, long double t) {
    const long double s = 1 - t;
    const auto part = [&](auto coordinate) {
        const long double p0 = coordinate(c.p[0]);
        const long double p1 = coordinate(c.p[1]);
        const long double p2 = coordinate(c.p[2]);
        const long double p3 = coordinate(c.p[3]);
        return 3 * (s * s * (p1 - p0) + 2 * s * t * (p2 - p1) + t * t * (p3 - p2));
    };
    return std::hypot(part([](Point p) { return p.x; }), part([](Point p) { return p.y; }));
}

// The real parts of the derivative's complex roots: near a cusp the speed has its kink there, which adaptive
// quadrature may step over unless it is told.
inline std::vector<long double> kinks_between(const Cubic& c, long double from, long double to) {
    using Complex = std::complex<long double>;
    const auto leg = [&](std::size_t i) {
        return Complex(static_cast<long double>(c.p[i + 1].x) - c.p[i].x,
                       static_cast<long double>(c.p[i + 1].y) - c.p[i].y);
    };
    const Complex square = leg(0) - 2.0L * leg(1) + leg(2);
    const Complex half = leg(1) - leg(0);
    const Complex root = std::sqrt(half * half - square * leg(0));
    std::vector<long double> kinks{from};
    for (const Complex t : {(-half + root) / square, (-half - root) / square}) {
        if (from < t.real() && t.real() < to) kinks.push_back(t.real());
    }
    kinks.push_back(to);
    std::sort(kinks.begin(), kinks.end());
    return kinks;
}

inline long double length_by_oracle(const Cubic& c, long double from = 0, long double to = 1) {
    using Rule = boost::math::quadrature::gauss_kronrod<long double, 31>;
    constexpr unsigned halvings = 16;
    const auto speed = [&](long double t) { return speed_by_oracle(c, t); };
    const std::vector<long double> kinks = kinks_between(c, from, to);
    long double sum = 0;
    for (std::size_t i = 1; i < kinks.size(); ++i) {
        if (kinks[i - 1] < kinks[i]) sum += Rule::integrate(speed, kinks[i - 1], kinks[i], halvings, 1e-14L);
    }
    return sum;
}

}  // namespace dartwright
