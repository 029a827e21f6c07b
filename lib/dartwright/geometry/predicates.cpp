#include "dartwright/geometry/predicates.hpp"

#include <algorithm>
#include <array>

#include "dartwright/geometry/orientation.hpp"
#include "dartwright/geometry/side_count.hpp"

namespace dartwright {
namespace {

bool are_opposite(Side a, Side b) {
    return static_cast<int>(a) * static_cast<int>(b) < 0;
}

bool has_disjoint_boxes(const Segment& first, const Segment& second) {
    return std::max(first.a.x, first.b.x) < std::min(second.a.x, second.b.x) ||
           std::max(second.a.x, second.b.x) < std::min(first.a.x, first.b.x) ||
           std::max(first.a.y, first.b.y) < std::min(second.a.y, second.b.y) ||
           std::max(second.a.y, second.b.y) < std::min(first.a.y, first.b.y);
}

// For segments so nearly parallel that their crossing cannot be computed: the middle of their common stretch.
Point middle_of_overlap(const Segment& first, const Segment& second) {
    std::array<Point, 4> ends{first.a, first.b, second.a, second.b};
    const Vector along = first.b - first.a;
    std::sort(ends.begin(), ends.end(),
              [&](Point p, Point q) { return dot(p - first.a, along) < dot(q - first.a, along); });
    return middle(ends[1], ends[2]);
}

}  // namespace

Side side_of_line(Point a, Point b, Point p) {
    return exact::side_of_line(a, b, p);
}

Meeting meeting_of(const Segment& first, const Segment& second) {
    if (has_disjoint_boxes(first, second)) return Meeting::none;
    const Side c = exact::side_of_line(first.a, first.b, second.a);
    const Side d = exact::side_of_line(first.a, first.b, second.b);
    if (c == d && c != Side::on) return Meeting::none;
    const Side a = exact::side_of_line(second.a, second.b, first.a);
    const Side b = exact::side_of_line(second.a, second.b, first.b);
    if (are_opposite(a, b) && are_opposite(c, d)) return Meeting::crossing;
    // Otherwise a common point, if there is one, includes an end of one of the two.
    const bool is_touching = (c == Side::on && is_in_box(first.a, first.b, second.a)) ||
                             (d == Side::on && is_in_box(first.a, first.b, second.b)) ||
                             (a == Side::on && is_in_box(second.a, second.b, first.a)) ||
                             (b == Side::on && is_in_box(second.a, second.b, first.b));
    return is_touching ? Meeting::touching : Meeting::none;
}

Point crossing_point(const Segment& first, const Segment& second) {
    const Vector along = first.b - first.a;
    const Vector across = second.b - second.a;
    const double t = cross(second.a - first.a, across) / cross(along, across);
    if (!(0 <= t && t <= 1)) return middle_of_overlap(first, second);
    return between(first.a, first.b, t);
}

Where where_in_polygon(std::span<const Point> polygon, Point p) {
    SideCount count(p);
    for (std::size_t i = 0; i < polygon.size(); ++i)
        if (count.pass(polygon[i], polygon[i + 1 == polygon.size() ? 0 : i + 1])) return Where::boundary;
    return count.where();
}

double signed_area(std::span<const Point> polygon) {
    double twice = 0;
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        twice += cross(polygon[i - 1] - polygon[0], polygon[i] - polygon[0]);
    }
    return 0.5 * twice;
}

}  // namespace dartwright
