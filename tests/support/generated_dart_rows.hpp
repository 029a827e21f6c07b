#pragma once

// Generated edges with several darts close beside one another, so that a folded dart comes to lie over its
// neighbours.

#include "support/generated_pieces.hpp"

namespace dartwright::testing {

/// One piece, `panel`: darts `dart 0`, `dart 1`, ... in its lower edge, with legs of one length each, from 1
/// mm to a hand's width, as near to each other as 0.5 mm; straight and curved edges between them.
inline Piece any_dart_row(int dart_count) {
    Piece piece;
    piece.name = "panel";
    piece.cut = Cut{};
    Point at{0, real_between(-5, 5)};
    piece.outline.start = at;
    const auto add_edge = [&](const std::string& name, Point to) {
        piece.outline.items.push_back({EdgeItem{name, any_shape(at, to, true), 0}, to});
        at = to;
    };
    for (int d = 0; d < dart_count; ++d) {
        const double gap = log_between(0.5, 40);
        add_edge("waist", {at.x + gap, at.y + gap * real_between(-0.2, 0.2)});
        const double intake = log_between(1, 80);
        const Point to{at.x + intake, at.y + intake * real_between(-0.03, 0.03)};
        DartItem dart;
        dart.name = "dart " + std::to_string(d);
        dart.point = middle(at, to) + log_between(50, 250) * unit(perpendicular(to - at));
        piece.outline.items.push_back({dart, to});
        at = to;
    }
    add_edge("waist", {at.x + log_between(0.5, 200), at.y + real_between(-5, 5)});
    const double width = at.x;
    add_edge("side", {width + real_between(-20, 20), 400});
    add_edge("top", {0, 400});
    add_edge("centre", piece.outline.start);
    return piece;
}

}  // namespace dartwright::testing
