#include "dartwright/geometry/arc_length.hpp"

#include <algorithm>
#include <limits>

#include "dartwright/geometry/speed_integral.hpp"

namespace dartwright {
namespace {

// Lengths that a search for a place adds up are found to this share of the curve's length: a tenth of the
// 1e-12 promised of the place, and well above the rounding of a sum of lengths (1e-15).
constexpr double search_relative_error = 1e-13;
// The place is promised to 1e-9 mm, or 1e-12 of the length.
constexpr double place_error_mm = 1e-9;
constexpr double place_relative_error = 1e-12;

struct Bracket {
    double low = 0;
    double high = 1;
};

// Finds the parameter by Newton's method, kept inside a bracket that every step narrows.
class PlaceSearch {
  public:
    PlaceSearch(const Cubic& cubic, double distance_mm)
        : hodograph_(speed::hodograph_of(cubic)),
          wanted_(distance_mm / hodograph_.unit_mm),
          tolerance_(search_relative_error * speed::least_length(hodograph_, {})) {}

    double parameter() const {
        const double whole = speed::length_over(hodograph_, {}, tolerance_);
        if (!(wanted_ > 0 && whole > 0)) return 0;
        if (!(wanted_ < whole)) return 1;
        const double enough =
            0.5 * std::max(place_error_mm / hodograph_.unit_mm, place_relative_error * whole);
        return search(whole, enough);
    }

  private:
    double search(double whole, double enough) const {
        Bracket bracket;
        double t = wanted_ / whole;
        double excess = length_between(0, t) - wanted_;
        double last_excess = std::numeric_limits<double>::infinity();
        while (std::abs(excess) > enough) {
            (excess > 0 ? bracket.high : bracket.low) = t;
            const bool is_fast = std::abs(excess) < 0.5 * std::abs(last_excess);
            const double next = is_fast ? newton_or_middle(t, excess, bracket) : middle_of(bracket);
            if (!(bracket.low < next && next < bracket.high)) break;
            last_excess = excess;
            excess += next > t ? length_between(t, next) : -length_between(next, t);
            t = next;
        }
        return t;
    }

    static double middle_of(Bracket bracket) { return 0.5 * (bracket.low + bracket.high); }

    double newton_or_middle(double t, double excess, Bracket bracket) const {
        const double speed = speed::speed_at(hodograph_, t);
        const double next = t - excess / speed;
        return bracket.low < next && next < bracket.high ? next : middle_of(bracket);
    }

    double length_between(double from, double to) const {
        return speed::length_over(hodograph_, speed::stretch_between(from, to), tolerance_);
    }

    speed::Hodograph hodograph_;
    double wanted_;
    double tolerance_;
};

double line_parameter_at(const Line& line, double distance_mm) {
    const double whole = distance(line.a, line.b);
    return whole > 0 ? std::clamp(distance_mm / whole, 0.0, 1.0) : 0;
}

}  // namespace

double length(const Curve& curve) {
    return length_between(curve, 0, 1);
}

double length_between(const Curve& curve, double from, double to) {
    if (const auto* line = std::get_if<Line>(&curve)) return (to - from) * distance(line->a, line->b);
    const speed::Hodograph hodograph = speed::hodograph_of(std::get<Cubic>(curve));
    const speed::Stretch stretch = speed::stretch_between(from, to);
    const double tolerance = arc_length_relative_error * speed::least_length(hodograph, stretch);
    return hodograph.unit_mm * speed::length_over(hodograph, stretch, tolerance);
}

double parameter_at(const Curve& curve, double distance_mm) {
    if (const auto* line = std::get_if<Line>(&curve)) return line_parameter_at(*line, distance_mm);
    return PlaceSearch(std::get<Cubic>(curve), distance_mm).parameter();
}

}  // namespace dartwright
