#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {
namespace {

void mirror_shape(const MirrorLine& line, Shape& shape) {
    if (auto* cubic = std::get_if<CubicShape>(&shape)) {
        for (Point& p : cubic->controls) p = mirrored(line, p);
    }
    if (auto* spline = std::get_if<SplineShape>(&shape)) {
        for (Point& p : spline->through) p = mirrored(line, p);
    }
}

void mirror_item(const MirrorLine& line, OutlineItem& item) {
    item.to = mirrored(line, item.to);
    if (EdgeItem* edge = item.as_edge()) mirror_shape(line, edge->shape);
    DartItem* dart = item.as_dart();
    if (!dart) return;
    dart->point = mirrored(line, dart->point);
    if (dart->pivot) dart->pivot = mirrored(line, *dart->pivot);
    if (!dart->legs) return;
    for (auto& leg : *dart->legs) {
        for (Point& p : leg) p = mirrored(line, p);
    }
}

void mirror_mark(const MirrorLine& line, Mark& mark) {
    if (auto* drill = std::get_if<DrillMark>(&mark.what)) drill->at = mirrored(line, drill->at);
    if (auto* stroke = std::get_if<LineMark>(&mark.what)) {
        for (Point& p : stroke->points) p = mirrored(line, p);
    }
}

void mirror_double_dart(const MirrorLine& line, DoubleDart& dart) {
    dart.from = mirrored(line, dart.from);
    dart.to = mirrored(line, dart.to);
    for (Point& p : dart.widest) p = mirrored(line, p);
}

void swap_end_words(Piece& piece) {
    for (Notch& notch : piece.notches) notch.from = with_end_words_swapped(notch.from);
    for (auto& [edge, allowance] : piece.allowance) {
        auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance);
        if (!stretches) continue;
        for (AllowanceStretch& each : *stretches) each.from = with_end_words_swapped(each.from);
    }
    if (!piece.cut) return;
    std::map<std::string, CornerIs> ends;
    for (const auto& [end, corner] : piece.cut->ends) ends.emplace(with_end_words_swapped(end), corner);
    piece.cut->ends = ends;
}

}  // namespace

std::string with_end_words_swapped(const std::string& from) {
    return from == "start" ? "end" : from == "end" ? "start" : from;
}

Point mirrored(const MirrorLine& line, Point p) {
    const Vector aside = perpendicular(line.along);
    return p - 2 * dot(p - line.at, aside) * aside;
}

Curve mirrored(const MirrorLine& line, const Curve& curve) {
    if (const auto* straight = std::get_if<Line>(&curve)) {
        return Line{mirrored(line, straight->a), mirrored(line, straight->b)};
    }
    Cubic cubic = std::get<Cubic>(curve);
    for (Point& p : cubic.p) p = mirrored(line, p);
    return cubic;
}

Outline mirrored(const MirrorLine& line, const Outline& outline) {
    Outline out = outline;
    out.start = mirrored(line, out.start);
    for (OutlineItem& item : out.items) mirror_item(line, item);
    return reversed(out);
}

Piece mirrored(const MirrorLine& line, Piece piece) {
    piece.outline = mirrored(line, piece.outline);
    if (piece.grain) {
        piece.grain->from = mirrored(line, piece.grain->from);
        piece.grain->to = mirrored(line, piece.grain->to);
    }
    for (DoubleDart& dart : piece.double_darts) mirror_double_dart(line, dart);
    for (Mark& mark : piece.marks) mirror_mark(line, mark);
    swap_end_words(piece);
    if (piece.worn) piece.side_up = piece.side_up == SideUp::right ? SideUp::wrong : SideUp::right;
    return piece;
}

}  // namespace dartwright
