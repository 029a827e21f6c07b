#include "dartwright/geometry/line_crossing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace dartwright {
namespace {

// A stretch as near to the line as this, mm, touches it: some units in the last place of a distance between
// places ten metres apart. Without it a curve that touches the line would be halved for as long as rounding
// gives now one side, now the other.
constexpr double touch_mm = 1e-11;

// Distances from the line, those to its left positive: of a cubic's control points, which makes them the
// Bernstein form of the distance along it.
using Distances = std::array<double, 4>;

struct DistanceHalves {
    Distances before;
    Distances after;
};

DistanceHalves halves(const Distances& d) {
    const double a = (d[0] + d[1]) / 2;
    const double b = (d[1] + d[2]) / 2;
    const double c = (d[2] + d[3]) / 2;
    const double ab = (a + b) / 2;
    const double bc = (b + c) / 2;
    const double middle = (ab + bc) / 2;
    return {{d[0], a, ab, middle}, {middle, bc, c, d[3]}};
}

struct Stretch {
    double from = 0;
    double to = 1;
};

// Halves a stretch at whose start the curve is left of the line and at whose end it is not, until no double
// lies between.
template <typename IsLeft>
double place_of_meeting(const IsLeft& is_left, Stretch stretch) {
    while (true) {
        const double t = (stretch.from + stretch.to) / 2;
        if (!(stretch.from < t && t < stretch.to)) return stretch.to;
        (is_left(t) ? stretch.from : stretch.to) = t;
    }
}

bool is_one_fall(const Distances& d) {
    const auto is_not_left = [](double value) { return !(value > 0); };
    const auto first = std::find_if(d.begin(), d.end(), is_not_left);
    return first != d.begin() && first != d.end() && std::all_of(first, d.end(), is_not_left);
}

// The form's values bound the distance, so a stretch whose values are all positive has no meeting; one that
// falls through zero once has one, and any other is halved.
template <typename IsLeft>
std::optional<double> meeting_in(const IsLeft& is_left, const Distances& d, Stretch stretch) {
    if (!(d[0] > 0)) return stretch.from;
    if (std::all_of(d.begin(), d.end(), [](double value) { return value > 0; })) return std::nullopt;
    if (is_one_fall(d)) return place_of_meeting(is_left, stretch);
    const auto is_touching = [](double value) { return std::abs(value) <= touch_mm; };
    if (std::all_of(d.begin(), d.end(), is_touching)) return stretch.from;
    const double middle = (stretch.from + stretch.to) / 2;
    const DistanceHalves parts = halves(d);
    const auto first = meeting_in(is_left, parts.before, {stretch.from, middle});
    return first ? first : meeting_in(is_left, parts.after, {middle, stretch.to});
}

}  // namespace

std::optional<double> first_meeting(const Curve& curve, const DirectedLine& line) {
    const Vector along = unit(line.along);
    const auto distance_left = [&](Point p) { return cross(along, p - line.at); };
    if (const auto* straight = std::get_if<Line>(&curve)) {
        const double from = distance_left(straight->a);
        const double to = distance_left(straight->b);
        if (!(from > 0)) return 0;
        if (to > 0) return std::nullopt;
        return from / (from - to);
    }
    const Cubic& c = std::get<Cubic>(curve);
    const Distances d{distance_left(c.p[0]), distance_left(c.p[1]), distance_left(c.p[2]),
                      distance_left(c.p[3])};
    const auto is_left = [&](double t) { return distance_left(point_at(curve, t)) > 0; };
    return meeting_in(is_left, d, {});
}

}  // namespace dartwright
