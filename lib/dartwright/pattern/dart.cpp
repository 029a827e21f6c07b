#include "dartwright/pattern/dart.hpp"

#include <stdexcept>

#include "dartwright/geometry/arc_length.hpp"

namespace dartwright {

DartFigures figures_of(const Outline& outline, std::size_t item) {
    const DartItem* dart = outline.items.at(item).as_dart();
    if (!dart) throw std::invalid_argument("the item of the outline is an edge, not a dart");
    const Legs legs = legs_of_item(outline, item);
    DartFigures out;
    out.a = start_of_item(outline, item);
    out.b = outline.items[item].to;
    out.point = dart->point;
    out.pivot = dart->turning_point();
    out.leg_a = length(legs.to_point);
    out.leg_b = length(legs.from_point);
    out.pivot_leg_a = distance(out.pivot, out.a);
    out.pivot_leg_b = distance(out.pivot, out.b);
    out.intake = distance(out.a, out.b);
    out.angle_rad = angle_from(out.a - out.pivot, out.b - out.pivot);
    out.sewn_angle_rad = angle_from(out.a - out.point, out.b - out.point);
    const Vector along = bisector_of(out);
    out.off_bisector = cross(along, out.point - out.pivot);
    out.back_off = dot(along, out.point - out.pivot);
    return out;
}

PairOfPoints stitching_ends(const Outline& outline, std::size_t item) {
    const DartItem* dart = outline.items.at(item).as_dart();
    if (!dart) throw std::invalid_argument("the item of the outline is an edge, not a dart");
    if (!dart->stitched) return {dart->point, dart->point};
    const Legs legs = legs_of_item(outline, item);
    const Curve down = reversed(legs.from_point);
    return {point_at(legs.to_point, parameter_at(legs.to_point, *dart->stitched)),
            point_at(down, parameter_at(down, *dart->stitched))};
}

Vector bisector_of(const DartFigures& figures) {
    return apply(turn_by(figures.angle_rad / 2), unit(figures.a - figures.pivot));
}

namespace {

Motion closing_about(Point centre, const DartFigures& f) {
    if (f.a == centre || f.b == centre) return {};
    return turn_about(centre, turn_between(f.b - centre, f.a - centre));
}

}  // namespace

Motion closing_about_pivot(const DartFigures& f) {
    return closing_about(f.pivot, f);
}

Motion closing_about_point(const DartFigures& f) {
    return closing_about(f.point, f);
}

}  // namespace dartwright
