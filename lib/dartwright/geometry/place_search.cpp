#include "dartwright/geometry/place_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dartwright {
namespace {

// Lengths that a search for a place adds up are found to this share of the curve's length: a tenth of the
// 1e-12 promised of the place, and well above the rounding of a sum of lengths (1e-15).
constexpr double search_relative_error = 1e-13;
// The place is promised to 1e-9 mm, or 1e-12 of the length.
constexpr double place_error_mm = 1e-9;
constexpr double place_relative_error = 1e-12;

}  // namespace

PlaceSearch::PlaceSearch(const Cubic& cubic)
    : hodograph_(speed::hodograph_of(cubic)),
      tolerance_(search_relative_error * speed::least_length(hodograph_, {})),
      whole_(speed::length_over(hodograph_, {}, tolerance_)) {}

double PlaceSearch::parameter_at(double distance_mm) const {
    const double wanted = distance_mm / hodograph_.unit_mm;
    if (!(wanted > 0 && whole_ > 0)) return 0;
    if (!(wanted < whole_)) return 1;
    return search(wanted, enough());
}

double PlaceSearch::enough() const {
    return 0.5 * std::max(place_error_mm / hodograph_.unit_mm, place_relative_error * whole_);
}

// As far on as the speed and its change there say. What is left is of the third order: by how much the speed
// turns, and its change changes, over the step.
PlaceSearch::Step PlaceSearch::step(double t, double length) const {
    const double s = 2 * t - 1;
    const auto& [c0, c1, c2] = hodograph_.z;
    const Vector z = c0 + s * (c1 + s * c2);
    const Vector change = 2 * (c1 + 2 * s * c2);
    const double squared_speed = squared_norm(z);
    const double speed = std::sqrt(squared_speed);
    const double by_speed = length / speed;
    const double by = by_speed - 0.5 * dot(z, change) / squared_speed * by_speed * by_speed;
    const double bend = squared_norm(change) + 8 * speed * std::sqrt(squared_norm(c2));
    return {by, std::abs(length) * bend / squared_speed * by_speed * by_speed};
}

double PlaceSearch::parameter_after(Reached& last, double distance_mm) const {
    const double wanted = distance_mm / hodograph_.unit_mm;
    if (!(wanted > 0 && whole_ > 0)) return 0;
    if (!(wanted < whole_)) return 1;
    if (wanted < last.length) last = {};
    constexpr int most_steps = 4;
    // Of a step so short that it is not measured; a hundred of them are still less than what is enough.
    constexpr double share_unmeasured = 0.01;
    Reached there = last;
    for (int i = 0; i < most_steps; ++i) {
        const double missing = wanted - there.length;
        if (std::abs(missing) <= share_unmeasured * enough()) {
            last = there;
            return there.t;
        }
        const auto [by, error] = step(there.t, missing);
        const double next = there.t + by;
        if (!(0 <= next && next <= 1)) break;
        if (error <= share_unmeasured * enough())
            there.length = wanted;
        else
            there.length += next > there.t ? length_between(there.t, next) : -length_between(next, there.t);
        there.t = next;
    }
    // Beside a cusp, where the speed says nothing.
    return search(wanted, enough());
}

// Newton's method, kept inside a bracket that every step narrows.
double PlaceSearch::search(double wanted, double enough) const {
    Bracket bracket;
    double t = wanted / whole_;
    double excess = length_between(0, t) - wanted;
    double last_excess = std::numeric_limits<double>::infinity();
    while (std::abs(excess) > enough) {
        (excess > 0 ? bracket.high : bracket.low) = t;
        const bool is_fast = std::abs(excess) < 0.5 * std::abs(last_excess);
        const double next = is_fast ? newton_or_middle(t, excess, bracket) : bracket.middle();
        if (!(bracket.low < next && next < bracket.high)) break;
        last_excess = excess;
        excess += next > t ? length_between(t, next) : -length_between(next, t);
        t = next;
    }
    return t;
}

double PlaceSearch::newton_or_middle(double t, double excess, Bracket bracket) const {
    const double speed = speed::speed_at(hodograph_, t);
    const double next = t - excess / speed;
    return bracket.low < next && next < bracket.high ? next : bracket.middle();
}

double PlaceSearch::length_between(double from, double to) const {
    return speed::length_over(hodograph_, speed::stretch_between(from, to), tolerance_);
}

}  // namespace dartwright
