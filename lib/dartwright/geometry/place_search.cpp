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
    return search(wanted, 0.5 * std::max(place_error_mm / hodograph_.unit_mm, place_relative_error * whole_));
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
