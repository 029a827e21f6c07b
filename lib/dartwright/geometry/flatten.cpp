#include "dartwright/geometry/flatten.hpp"

#include <algorithm>
#include <stdexcept>

namespace dartwright {
namespace {

// A chord over a step h of the parameter strays from the curve by at most h^2 / 8 times the greatest second
// derivative, point for point of the parameter; that of a cubic is greatest at an end.
std::size_t steps_for(const Cubic& c, double chord_error_mm) {
    const Vector at_start = (c.p[0] - c.p[1]) + (c.p[2] - c.p[1]);
    const Vector at_end = (c.p[1] - c.p[2]) + (c.p[3] - c.p[2]);
    const double second_derivative = 6 * std::max(norm(at_start), norm(at_end));
    const double steps = std::ceil(std::sqrt(second_derivative / (8 * chord_error_mm)));
    // More steps than this are a slip in the units, and would not fit in memory.
    constexpr double most_steps = 1e8;
    if (!(steps <= most_steps)) throw std::invalid_argument("the chord error is too small for this curve");
    return std::max<std::size_t>(1, static_cast<std::size_t>(steps));
}

}  // namespace

void flatten_onto(std::vector<Point>& polyline, const Curve& curve, double chord_error_mm) {
    if (!(chord_error_mm > 0)) throw std::invalid_argument("a chord error must be more than zero");
    if (const auto* cubic = std::get_if<Cubic>(&curve)) {
        const std::size_t steps = steps_for(*cubic, chord_error_mm);
        for (std::size_t i = 1; i < steps; ++i) {
            polyline.push_back(point_at(curve, static_cast<double>(i) / static_cast<double>(steps)));
        }
    }
    polyline.push_back(end_of(curve));
}

std::vector<Point> flattened(const Curve& curve, double chord_error_mm) {
    std::vector<Point> polyline{start_of(curve)};
    flatten_onto(polyline, curve, chord_error_mm);
    return polyline;
}

}  // namespace dartwright
