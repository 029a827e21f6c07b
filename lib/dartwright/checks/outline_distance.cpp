#include "dartwright/checks/outline_distance.hpp"

#include <algorithm>
#include <limits>

#include "dartwright/geometry/closest.hpp"

namespace dartwright {
namespace {

struct BoxedCurve {
    Curve curve;
    Box box;
};

std::vector<BoxedCurve> drawn(const Outline& outline, const Motion& motion) {
    std::vector<BoxedCurve> out;
    const auto add = [&](const Curve& curve) {
        const Curve there = moved(curve, motion);
        out.push_back({there, bounds(there)});
    };
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_edge()) {
            for (const Curve& curve : curves_of_item(outline, i)) add(curve);
        } else {
            const Legs legs = legs_of_item(outline, i);
            add(legs.to_point);
            add(legs.from_point);
        }
    }
    return out;
}

double distance_to_box(const Box& box, Point p) {
    return norm({std::max({box.low.x - p.x, 0.0, p.x - box.high.x}),
                 std::max({box.low.y - p.y, 0.0, p.y - box.high.y})});
}

double distance_to(const std::vector<BoxedCurve>& curves, Point p) {
    double least = std::numeric_limits<double>::infinity();
    for (const BoxedCurve& each : curves) {
        if (distance_to_box(each.box, p) < least) {
            least = std::min(least, closest_point(each.curve, p).distance);
        }
    }
    return least;
}

std::array<Point, 4> controls_of(const Curve& curve) {
    if (const auto* cubic = std::get_if<Cubic>(&curve)) return cubic->p;
    const Point a = start_of(curve);
    const Point b = end_of(curve);
    return {a, between(a, b, 1.0 / 3), between(a, b, 2.0 / 3), b};
}

double length_at_most(const Curve& curve) {
    if (std::holds_alternative<Line>(curve)) return distance(start_of(curve), end_of(curve));
    const std::array<Point, 4> p = controls_of(curve);
    return distance(p[0], p[1]) + distance(p[1], p[2]) + distance(p[2], p[3]);
}

// Two curves lie no farther apart than their control points do.
double apart_at_most(const Curve& curve, const std::vector<BoxedCurve>& others) {
    double least = std::numeric_limits<double>::infinity();
    const std::array<Point, 4> p = controls_of(curve);
    for (const BoxedCurve& other : others) {
        const std::array<Point, 4> q = controls_of(other.curve);
        double most = 0;
        for (std::size_t i = 0; i < p.size(); ++i) most = std::max(most, distance(p[i], q[i]));
        least = std::min(least, most);
    }
    return least;
}

class FarthestPlace {
  public:
    void look(const std::vector<BoxedCurve>& from, const std::vector<BoxedCurve>& to) {
        for (const BoxedCurve& each : from) {
            const double start = distance_to(to, start_of(each.curve));
            const double end = distance_to(to, end_of(each.curve));
            best_ = std::max({best_, start, end});
            const double bound = apart_at_most(each.curve, to);
            if (bound <= best_ + outline_distance_error_mm) {
                at_most_ = std::max(at_most_, bound);
            } else {
                search(to, each.curve, {start, end});
            }
        }
    }
    OutlineDistance found() const { return {best_, std::max(best_, at_most_)}; }

  private:
    struct EndDistances {
        double start;
        double end;
    };
    void search(const std::vector<BoxedCurve>& to, const Curve& curve, EndDistances ends) {
        const double bound = 0.5 * (ends.start + ends.end + length_at_most(curve));
        if (bound <= best_ + outline_distance_error_mm) {
            at_most_ = std::max(at_most_, bound);
            return;
        }
        const CurveHalves halves = split_at(curve, 0.5);
        const double middle = distance_to(to, end_of(halves.before));
        best_ = std::max(best_, middle);
        search(to, halves.before, {ends.start, middle});
        search(to, halves.after, {middle, ends.end});
    }

    double best_ = 0;
    double at_most_ = 0;
};

}  // namespace

OutlineDistance outline_distance(const Outline& first, const Motion& motion, const Outline& second) {
    const std::vector<BoxedCurve> a = drawn(first, motion);
    const std::vector<BoxedCurve> b = drawn(second, Motion{});
    FarthestPlace farthest;
    farthest.look(a, b);
    farthest.look(b, a);
    return farthest.found();
}

}  // namespace dartwright
