#pragma once

// Generated pairs of pieces with a seam between them, for properties: panels with edges of any shape, of
// slightly different lengths, drawn either way round.

#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

struct GeneratedSeam {
    Pattern pattern;
    double height_mm = 0;
};

// Four corners about those of a rectangle, anticlockwise from the hem's beginning.
struct Panel {
    double width = 0;
    double height = 0;
    double waver = 0;  ///< how far corners lie beside the rectangle's
};

inline Point wavering(Point p, double by) {
    return {p.x + real_between(-by, by), p.y + real_between(-by, by)};
}

inline Piece any_panel(const std::string& name, const Panel& panel) {
    Piece piece;
    piece.name = name;
    piece.cut = Cut{2, "", false, {}};
    const Point hem = wavering({panel.width, 0}, panel.waver);
    const Point waist = wavering({panel.width, panel.height}, panel.waver);
    const Point middle_of_side = wavering(middle(hem, waist), panel.waver / 4);
    const Point top{0, panel.height};
    piece.outline.start = {0, 0};
    const auto add = [&](const char* edge, Point to) {
        const Point from = piece.outline.items.empty() ? piece.outline.start : piece.outline.items.back().to;
        piece.outline.items.push_back({EdgeItem{edge, any_shape(from, to, true), 0}, to});
    };
    add("hem", hem);
    if (*rc::gen::arbitrary<bool>()) add("side", middle_of_side);
    add("side", waist);
    add("waist", top);
    piece.outline.items.push_back({EdgeItem{"centre", StraightShape{}, 0}, piece.outline.start});
    if (*evenly(0, 4) == 0) {
        EdgeItem& side = *piece.outline.items[1].as_edge();
        side.fullness = panel.height * real_between(0.01, 0.05);
    }
    return piece;
}

inline GeneratedSeam any_seam() {
    GeneratedSeam out;
    Panel panel{real_between(150, 400), real_between(150, 700), 0};
    panel.waver = real_between(0, 15);
    out.height_mm = panel.height;
    out.pattern.name = "generated";
    out.pattern.pieces.push_back(any_panel("first", panel));
    panel.height += real_between(-10, 10);
    const Similarity s{real_between(-3, 3),
                       1,
                       *rc::gen::arbitrary<bool>(),
                       {real_between(-500, 500), real_between(-500, 500)}};
    out.pattern.pieces.push_back(image(s, any_panel("second", panel)));
    const std::string from = *rc::gen::element<std::string>("hem", "waist");
    Seam seam;
    seam.name = "side";
    seam.joins = {SeamSide{{"first", "side", from, false}}, SeamSide{{"second", "side", from, false}}};
    if (*rc::gen::arbitrary<bool>()) {
        seam.ease = Ease{*evenly(1, 3), real_between(0, 5), true};
    }
    out.pattern.seams.push_back(seam);
    for (Piece& piece : out.pattern.pieces) {
        piece.notches.push_back({"side", "hem", panel.height * 0.4, NotchKind::single});
        piece.notches.push_back({"side", "waist", panel.height * 0.3, NotchKind::double_});
        piece.notches.push_back({"waist", "side", panel.width * 0.5, NotchKind::single});
    }
    return out;
}

}  // namespace dartwright::testing
