#pragma once

// Generated edges with several darts close beside one another, so that a folded dart comes to lie over its
// neighbours.

#include "support/generated_pieces.hpp"

namespace dartwright::testing {

/// One piece, `panel`: darts `dart 0`, `dart 1`, ... in its lower edge, with legs of one length each, from 1
/// mm to a hand's width, as near to each other as 0.5 mm; straight and curved edges between them.
/// No wedge meets another: the mouths are level and the darts upright.
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
        const Point to{at.x + intake, at.y};
        DartItem dart;
        dart.name = "dart " + std::to_string(d);
        dart.point = middle(at, to) + Vector{0, log_between(50, 250)};
        piece.outline.items.push_back({dart, to});
        at = to;
    }
    const double rest = log_between(0.5, 200);
    add_edge("waist", {at.x + rest, at.y + rest * real_between(-0.1, 0.1)});
    const auto close_by = [&](const std::string& name, Point to) {
        piece.outline.items.push_back({EdgeItem{name, StraightShape{}, 0}, to});
    };
    close_by("side", {at.x + real_between(0, 20), 400});
    close_by("top", {0, 400});
    close_by("centre", piece.outline.start);
    return piece;
}

}  // namespace dartwright::testing
