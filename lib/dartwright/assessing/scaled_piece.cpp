#include "dartwright/assessing/scaled_piece.hpp"

namespace dartwright {
namespace {

void scale(Point& p, double factor) {
    p = {factor * p.x, factor * p.y};
}

void scale(EdgeItem& edge, double factor) {
    edge.fullness *= factor;
    if (auto* cubic = std::get_if<CubicShape>(&edge.shape))
        for (Point& p : cubic->controls) scale(p, factor);
    if (auto* spline = std::get_if<SplineShape>(&edge.shape))
        for (Point& p : spline->through) scale(p, factor);
}

void scale(DartItem& dart, double factor) {
    scale(dart.point, factor);
    if (dart.pivot) scale(*dart.pivot, factor);
    if (dart.back_off) *dart.back_off *= factor;
    if (dart.stitched) *dart.stitched *= factor;
    if (!dart.legs) return;
    for (std::array<Point, 2>& leg : *dart.legs)
        for (Point& control : leg) scale(control, factor);
}

void scale(Outline& outline, double factor) {
    scale(outline.start, factor);
    for (OutlineItem& item : outline.items) {
        scale(item.to, factor);
        if (EdgeItem* edge = item.as_edge()) scale(*edge, factor);
        if (DartItem* dart = item.as_dart()) scale(*dart, factor);
    }
}

void scale(Allowance& allowance, double factor) {
    if (double* width = std::get_if<double>(&allowance)) {
        *width *= factor;
        return;
    }
    for (AllowanceStretch& each : std::get<std::vector<AllowanceStretch>>(allowance)) {
        each.at *= factor;
        each.to *= factor;
        each.width *= factor;
    }
}

void scale(Mark& mark, double factor) {
    if (auto* line = std::get_if<LineMark>(&mark.what))
        for (Point& p : line->points) scale(p, factor);
    if (auto* drill = std::get_if<DrillMark>(&mark.what)) scale(drill->at, factor);
}

}  // namespace

Piece scaled(Piece piece, double factor) {
    scale(piece.outline, factor);
    if (piece.grain) {
        scale(piece.grain->from, factor);
        scale(piece.grain->to, factor);
    }
    for (DoubleDart& dart : piece.double_darts)
        for (Point* p : {&dart.from, &dart.to, &dart.widest[0], &dart.widest[1]}) scale(*p, factor);
    for (Notch& notch : piece.notches) notch.at *= factor;
    for (auto& [edge, allowance] : piece.allowance) scale(allowance, factor);
    for (Mark& mark : piece.marks) scale(mark, factor);
    return piece;
}

}  // namespace dartwright
