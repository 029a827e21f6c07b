#include "dartwright/drawing/drawing.hpp"

#include <algorithm>
#include <stdexcept>

#include "dartwright/drawing/text_box.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/geometry/flatten.hpp"

namespace dartwright {

namespace {

bool is_finite_curve(const Curve& curve) {
    if (const Line* line = std::get_if<Line>(&curve)) return is_finite(line->a) && is_finite(line->b);
    const auto& p = std::get<Cubic>(curve).p;
    return std::all_of(p.begin(), p.end(), [](Point point) { return is_finite(point); });
}

bool is_finite_stroke(const Stroke& stroke) {
    return std::isfinite(stroke.width_mm) && std::isfinite(stroke.dash_begin_mm) &&
           std::all_of(stroke.dash_mm.begin(), stroke.dash_mm.end(),
                       [](double length) { return std::isfinite(length) && length > 0; });
}

bool is_drawable(const DrawnItem& item) {
    if (const DrawnText* text = std::get_if<DrawnText>(&item))
        return is_finite(text->at) && std::isfinite(text->size_mm) && std::isfinite(text->angle_rad);
    const DrawnPath& path = std::get<DrawnPath>(item);
    return std::all_of(path.curves.begin(), path.curves.end(), is_finite_curve) &&
           (!path.stroke || is_finite_stroke(*path.stroke));
}

bool is_drawable(const DrawnGroup& group) {
    return std::all_of(group.items.begin(), group.items.end(),
                       [](const DrawnItem& item) { return is_drawable(item); }) &&
           std::all_of(group.groups.begin(), group.groups.end(),
                       [](const DrawnGroup& inner) { return is_drawable(inner); });
}

DrawnItem moved(const DrawnItem& item, const Motion& motion, double turn_rad) {
    if (const DrawnText* text = std::get_if<DrawnText>(&item)) {
        DrawnText result = *text;
        result.at = apply(motion, text->at);
        result.angle_rad += turn_rad;
        return result;
    }
    DrawnPath result = std::get<DrawnPath>(item);
    for (Curve& curve : result.curves) curve = moved(curve, motion);
    return result;
}

DrawnGroup moved(const DrawnGroup& group, const Motion& motion, double turn_rad) {
    DrawnGroup result;
    result.name = group.name;
    for (const DrawnItem& item : group.items) result.items.push_back(moved(item, motion, turn_rad));
    for (const DrawnGroup& inner : group.groups) result.groups.push_back(moved(inner, motion, turn_rad));
    if (group.clip && turn_rad != 0) throw std::invalid_argument("a group that is clipped cannot be turned");
    if (group.clip) result.clip = Box{group.clip->low + motion.shift, group.clip->high + motion.shift};
    return result;
}

std::optional<Box> either(const std::optional<Box>& a, const std::optional<Box>& b) {
    if (a && b) return joined(*a, *b);
    return a ? a : b;
}

std::optional<Box> bounds(const DrawnItem& item) {
    if (const DrawnText* text = std::get_if<DrawnText>(&item)) return upright_box(box_of(*text));
    std::optional<Box> result;
    for (const Curve& curve : std::get<DrawnPath>(item).curves) {
        result = either(result, Box{start_of(curve), start_of(curve)});
        for (const Point p : flattened(curve, picture_chord_error_mm)) result = either(result, Box{p, p});
    }
    return result;
}

}  // namespace

DrawnPath polyline(const std::vector<Point>& points, const Stroke& stroke) {
    if (points.size() < 2) throw std::invalid_argument("a line needs two points");
    DrawnPath path;
    for (std::size_t i = 1; i < points.size(); ++i) path.curves.push_back(Line{points[i - 1], points[i]});
    path.stroke = stroke;
    return path;
}

DrawnPath polygon(const std::vector<Point>& points, Colour fill) {
    if (points.size() < 3) throw std::invalid_argument("a polygon needs three points");
    DrawnPath path;
    for (std::size_t i = 1; i < points.size(); ++i) path.curves.push_back(Line{points[i - 1], points[i]});
    path.is_closed = true;
    path.fill = fill;
    return path;
}

DrawnPath circle(Point centre, double radius_mm) {
    // Control points at 4/3 tan(pi/8) of the radius make the middle of each quarter lie on the circle.
    const double k = 4.0 / 3.0 * tangent_of(pi / 8) * radius_mm;
    const double r = radius_mm;
    DrawnPath path;
    Vector out{r, 0};
    for (int quarter = 0; quarter < 4; ++quarter) {
        const Vector along = perpendicular(out);
        path.curves.push_back(Cubic{
            {centre + out, centre + out + (k / r) * along, centre + along + (k / r) * out, centre + along}});
        out = along;
    }
    path.is_closed = true;
    return path;
}

DrawnGroup moved(const DrawnGroup& group, Vector shift) {
    return moved(group, shift_by(shift), 0);
}

DrawnGroup carried(const DrawnGroup& group, const Motion& motion) {
    return moved(group, motion, angle(motion));
}

std::optional<Box> bounds(const DrawnGroup& group) {
    std::optional<Box> result;
    for (const DrawnItem& item : group.items) result = either(result, bounds(item));
    for (const DrawnGroup& inner : group.groups) result = either(result, bounds(inner));
    return result;
}

void require_drawable(const Drawing& drawing) {
    const bool has_size = std::isfinite(drawing.width_mm) && std::isfinite(drawing.height_mm) &&
                          drawing.width_mm > 0 && drawing.height_mm > 0;
    if (!has_size) throw std::invalid_argument("a drawing needs a width and a height above 0");
    for (const DrawnGroup& group : drawing.groups)
        if (!is_drawable(group)) throw std::invalid_argument("a number in the drawing is not finite");
}

}  // namespace dartwright
