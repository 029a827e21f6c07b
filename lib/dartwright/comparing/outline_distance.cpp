#include "dartwright/comparing/outline_distance.hpp"

#include <algorithm>

#include "dartwright/geometry/curve_tree.hpp"

namespace dartwright {
namespace {

std::vector<Curve> drawn(const Outline& outline, const Motion& motion) {
    std::vector<Curve> out;
    out.reserve(outline.items.size());
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_edge()) {
            for (const Curve& curve : curves_of_item(outline, i)) out.push_back(moved(curve, motion));
        } else {
            const Legs legs = legs_of_item(outline, i);
            out.push_back(moved(legs.to_point, motion));
            out.push_back(moved(legs.from_point, motion));
        }
    }
    return out;
}

double length_at_most(const Curve& curve) {
    if (std::holds_alternative<Line>(curve)) return distance(start_of(curve), end_of(curve));
    const std::array<Point, 4> p = controls_of(curve);
    return distance(p[0], p[1]) + distance(p[1], p[2]) + distance(p[2], p[3]);
}

class FarthestPlace {
  public:
    // The curves of an outline follow each other without a gap.
    void look(const CurveTree& from, const CurveTree& to) {
        if (from.curves().empty()) return;
        double start = look_from(start_of(from.curves().front()), to);
        for (const Curve& each : from.curves()) {
            const double end = look_from(end_of(each), to);
            // What allows nothing farther than the farthest found need not be known more exactly.
            const double bound = to.controls_apart(each, best_);
            if (bound <= best_ + outline_distance_error_mm) {
                at_most_ = std::max(at_most_, bound);
            } else {
                search(to, each, {start, end});
            }
            start = end;
        }
    }
    OutlineDistance found() const { return {best_, std::max(best_, at_most_)}; }

  private:
    struct EndDistances {
        double start;
        double end;
    };
    double look_from(Point p, const CurveTree& to) {
        const double away = to.distance_from(p);
        best_ = std::max(best_, away);
        return away;
    }
    void search(const CurveTree& to, const Curve& curve, EndDistances ends) {
        const double bound = 0.5 * (ends.start + ends.end + length_at_most(curve));
        if (bound <= best_ + outline_distance_error_mm) {
            at_most_ = std::max(at_most_, bound);
            return;
        }
        const CurveHalves halves = split_at(curve, 0.5);
        const double middle = look_from(end_of(halves.before), to);
        search(to, halves.before, {ends.start, middle});
        search(to, halves.after, {middle, ends.end});
    }

    double best_ = 0;
    double at_most_ = 0;
};

}  // namespace

OutlineDistance outline_distance(const Outline& first, const Motion& motion, const Outline& second) {
    const CurveTree a(drawn(first, motion));
    const CurveTree b(drawn(second, Motion{}));
    FarthestPlace farthest;
    farthest.look(a, b);
    farthest.look(b, a);
    return farthest.found();
}

}  // namespace dartwright
