#pragma once

// The length by graded quadrature in long double (Boost.Math), as an outside check.

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
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

// The real parts of the derivative's complex roots: near a cusp the speed has its kink there, which a rule
// may step over unless it is told.
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

/// Between two kinks: Boost's rule of 30 points on stretches that halve towards both ends, each at least as
/// far from the kinks as it is wide. (Boost's adaptive quadrature either steps over a kink or, asked for more
/// digits, never ends beside one.)
template <class Speed>
long double length_by_halving(const Speed& speed, long double from, long double to) {
    using Rule = boost::math::quadrature::gauss<long double, 30>;
    constexpr int halvings = 45;
    const long double half = (to - from) / 2;
    long double sum = 0;
    for (int i = 0; i <= halvings; ++i) {
        const long double outer = half * std::exp2(static_cast<long double>(-i));
        const long double inner = i == halvings ? 0 : outer / 2;
        sum += Rule::integrate([&](long double d) { return speed(from + d) + speed(to - d); }, inner, outer);
    }
    return sum;
}

inline long double length_by_oracle(const Cubic& c, long double from = 0, long double to = 1) {
    const auto speed = [&](long double t) { return speed_by_oracle(c, t); };
    const std::vector<long double> kinks = kinks_between(c, from, to);
    long double sum = 0;
    for (std::size_t i = 1; i < kinks.size(); ++i) {
        if (kinks[i - 1] < kinks[i]) sum += length_by_halving(speed, kinks[i - 1], kinks[i]);
    }
    return sum;
}

}  // namespace dartwright
