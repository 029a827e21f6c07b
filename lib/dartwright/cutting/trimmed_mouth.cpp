#include "dartwright/cutting/trimmed_mouth.hpp"

#include <algorithm>

namespace dartwright::cutting {
namespace {

// The points from a mouth end along the cap to the line beside its leg; empty if they do not come to it.
std::vector<Point> to_line_beside_leg(const std::vector<Point>& cap, Vector inwards, double from_leg) {
    std::vector<Point> out;
    const auto beyond = [&](Point p) { return dot(inwards, p - cap.front()) - from_leg; };
    for (std::size_t k = 0; k + 1 < cap.size(); ++k) {
        const double here = beyond(cap[k]);
        const double next = beyond(cap[k + 1]);
        if (here <= 0 && next > 0) {
            out.push_back(between(cap[k], cap[k + 1], here / (here - next)));
            return out;
        }
        out.push_back(cap[k + 1]);
    }
    return {};
}

}  // namespace

std::optional<std::vector<RawPoint>> trimmed_mouth(const TrimmedDart& dart, const std::vector<RawPoint>& cap,
                                                   const Trimming& trimming) {
    const Vector leg_a = unit(dart.a - dart.point);
    const Vector leg_b = unit(dart.b - dart.point);
    const Vector across = leg_b - leg_a;
    const double half_sine = norm(across) / 2;
    if (!(half_sine > 0) || !(cross(leg_a, leg_b) > 0)) return std::nullopt;
    const Vector centre = unit(perpendicular(-1 * across));
    const Point deepest = dart.point + trimming.width_mm / half_sine * centre;
    std::vector<Point> from_a{dart.a};
    for (const RawPoint& p : cap) from_a.push_back(p.at);
    from_a.push_back(dart.b);
    const std::vector<Point> from_b(from_a.rbegin(), from_a.rend());
    const std::vector<Point> first = to_line_beside_leg(from_a, perpendicular(leg_a), trimming.width_mm);
    const std::vector<Point> last = to_line_beside_leg(from_b, -perpendicular(leg_b), trimming.width_mm);
    if (first.empty() || last.empty()) return std::nullopt;
    const auto along = [&](Point p) { return dot(centre, p - deepest); };
    if (!(along(first.back()) > 0 && along(last.back()) > 0)) return std::nullopt;
    // Each line must meet the cap on its own side of the centre line.
    if (cross(centre, first.back() - dart.point) > 0 || cross(centre, last.back() - dart.point) < 0) {
        return std::nullopt;
    }
    std::vector<RawPoint> out;
    for (const Point p : first) out.push_back({p, {CutPart::mouth, trimming.item, 0}});
    out.back().side.part = CutPart::leg;
    out.push_back({deepest, {CutPart::leg, trimming.item, 0}});
    for (auto p = last.rbegin(); p != last.rend(); ++p)
        out.push_back({*p, {CutPart::mouth, trimming.item, 0}});
    return out;
}

}  // namespace dartwright::cutting
