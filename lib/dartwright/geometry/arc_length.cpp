#include "dartwright/geometry/arc_length.hpp"

#include <algorithm>

#include "dartwright/geometry/place_search.hpp"
#include "dartwright/geometry/speed_integral.hpp"

namespace dartwright {
namespace {

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
    return PlaceSearch(std::get<Cubic>(curve)).parameter_at(distance_mm);
}

}  // namespace dartwright
