#include "dartwright/pages/scaled.hpp"

namespace dartwright {
namespace {

Point scaled(Point p, double factor) {
    return {factor * p.x, factor * p.y};
}

Curve scaled(const Curve& curve, double factor) {
    if (const Line* line = std::get_if<Line>(&curve)) {
        Line out = *line;
        for (Point* p : {&out.a, &out.b}) *p = scaled(*p, factor);
        return out;
    }
    Cubic out = std::get<Cubic>(curve);
    for (Point& p : out.p) p = scaled(p, factor);
    return out;
}

DrawnItem scaled(const DrawnItem& item, double factor) {
    if (const DrawnText* text = std::get_if<DrawnText>(&item)) {
        DrawnText out = *text;
        out.at = scaled(out.at, factor);
        out.size_mm *= factor;
        return out;
    }
    DrawnPath out = std::get<DrawnPath>(item);
    for (Curve& curve : out.curves) curve = scaled(curve, factor);
    if (out.stroke) {
        out.stroke->width_mm *= factor;
        for (double& dash : out.stroke->dash_mm) dash *= factor;
        out.stroke->dash_begin_mm *= factor;
    }
    return out;
}

}  // namespace

DrawnGroup scaled(const DrawnGroup& group, double factor) {
    DrawnGroup out;
    out.name = group.name;
    for (const DrawnItem& item : group.items) out.items.push_back(scaled(item, factor));
    for (const DrawnGroup& inner : group.groups) out.groups.push_back(scaled(inner, factor));
    return out;
}

}  // namespace dartwright
