#pragma once

// Generated halves of pieces on the fold: star-shaped about the middle of the fold, with one dart.

#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

inline std::vector<double> any_corner_angles() {
    const int count = *evenly(2, 5);
    std::vector<double> angles;
    for (int k = 1; k <= count; ++k)
        angles.push_back(radians(-90 + 180.0 * k / (count + 1) + real_between(-6, 6)));
    return angles;
}

/// One piece, `half`, on the fold `fold`, whose dart `dart` has its mouth at a corner; in the plane as it was
/// drawn, the fold lies along the y axis, walked downwards, and the piece to the right of it.
inline Pattern any_half() {
    const double r = log_between(60, 800);
    const Point middle_of_fold{0, 0};
    Piece piece;
    piece.name = "half";
    piece.cut = Cut{1, "fold", false, {}};
    Point from{0, -r * real_between(0.75, 1)};
    piece.outline.start = from;
    const std::vector<double> angles = any_corner_angles();
    const std::size_t with_dart = any_index_of(angles);
    const bool is_in_corner = *rc::gen::arbitrary<bool>();
    const Point pivot{r * real_between(0.2, 0.35), r * real_between(-0.05, 0.05)};
    int run = 0;
    const auto add_edge = [&](Point to) {
        const std::string name = std::string("edge ") + std::to_string(run);
        piece.outline.items.push_back({EdgeItem{name, any_shape(from, to, true), 0}, to});
        from = to;
    };
    for (std::size_t k = 0; k < angles.size(); ++k) {
        add_edge(polar(middle_of_fold, r * real_between(0.75, 1), angles[k]));
        if (k == with_dart) {
            const Turn turn = turn_by(radians(real_between(3, 9)));
            DartItem dart;
            dart.name = "dart";
            dart.pivot = pivot;
            const Point to = pivot + apply(turn, from - pivot);
            dart.point = pivot + real_between(0, 0.2) * (middle(from, to) - pivot);
            dart.press = *rc::gen::arbitrary<bool>() ? "fold" : "edge 0";
            piece.outline.items.push_back({dart, to});
            from = to;
            if (is_in_corner) ++run;
        } else {
            ++run;
        }
    }
    add_edge({0, r * real_between(0.75, 1)});
    piece.outline.items.push_back({EdgeItem{"fold", StraightShape{}, 0}, piece.outline.start});
    piece.grain = Grain{{r / 10, -r / 8}, {r / 10, r / 8}, "fold"};
    for (const Run& each : runs_of(piece.outline)) {
        if (each.edge == "fold") continue;
        piece.notches.push_back(
            {each.edge, name_of_end(each, RunEnd::end), each.length * 0.3, NotchKind::single});
        piece.allowance.emplace_back(
            each.edge, std::vector<AllowanceStretch>{
                           {name_of_end(each, RunEnd::start), 0, each.length * 0.4, 10},
                           {name_of_end(each, RunEnd::start), each.length * 0.4, each.length, 15}});
    }
    piece.marks.push_back({LineMark{{{0, r / 20}, {r / 8, r / 20}}}, "level"});
    piece.marks.push_back({LineMark{{{r / 20, 0}, {r / 10, r / 15}}}, "pocket"});
    piece.marks.push_back({DrillMark{{r / 15, r / 30}}, "hole"});
    Pattern pattern;
    pattern.name = "generated";
    pattern.pieces.push_back(piece);
    return pattern;
}

}  // namespace dartwright::testing
