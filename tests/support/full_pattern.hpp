#pragma once

// A generated pattern with every field filled that a comparison speaks of.

#include "dartwright/pattern/dart.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

/// One edge all round, which may begin at its notch.
inline Piece round_lid(double r) {
    Piece lid;
    lid.name = "lid";
    lid.outline.start = {-r, 0};
    lid.outline.items = {{EdgeItem{"rim", CubicShape{{Point{-r, -r}, Point{r, -r}}}, 0}, {r, 0}},
                         {EdgeItem{"rim", CubicShape{{Point{r, r}, Point{-r, r}}}, 0}, {-r, 0}}};
    lid.notches = {{"rim", "start", r / 2, NotchKind::single}};
    return lid;
}

/// Two copies of a generated piece, sewn to each other, with every field filled, and a round one.
inline Pattern full_pattern(const GeneratedPiece& generated) {
    Pattern pattern = generated.pattern;
    pattern.name = "two";
    Piece& piece = pattern.pieces[0];
    const Point middle = generated.pivot;
    const double r = generated.size_mm;
    const auto at = [&](double x, double y) { return middle + Vector{x * r / 50, y * r / 50}; };
    const auto runs = runs_of(piece.outline);
    piece.double_darts = {{"back dart", at(0, 3), at(0.5, -3), {{at(1, 0), at(-1, 0.2)}}, runs.front().edge}};
    piece.marks = {{LineMark{{at(-2, 1), at(2, 1.5), at(3, 2)}}, "level"}, {DrillMark{at(1, 1)}, "hole"}};
    piece.grain = Grain{at(0, -2), at(0.3, 2), ""};
    piece.cut = Cut{2, runs.back().edge, false, {}, ""};
    piece.allowance = {{runs[0].edge, Allowance{10.0}}};
    piece.worn = Worn::front;
    Piece other = piece;
    other.name = "other";
    pattern.pieces.push_back(other);
    pattern.pieces.push_back(round_lid(r));
    Seam seam;
    seam.name = "join";
    for (std::size_t k = 0; k < 2; ++k)
        seam.joins[k] = {{pattern.pieces[k].name, runs[0].edge, name_of_end(runs[0], RunEnd::start), false}};
    seam.ends = {{name_of_end(runs[0], RunEnd::end), CornerIs::free}};
    pattern.seams = {seam};
    return pattern;
}

}  // namespace dartwright::testing
