#pragma once

// Private to the library: one piece of two patterns, measured side by side.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/comparing/compare.hpp"

namespace dartwright {

/// A piece with its outline ending exactly where it starts, and its runs.
struct ShapedPiece {
    Piece piece;
    std::vector<Run> runs;
};
/// Impossible if the outline is open by more than the tolerance `gap`; `which` names the pattern.
ShapedPiece shaped_piece(const Piece& piece, const Tolerances& tolerances, const std::string& which);

/// Both as they are measured: the second is mirrored if it lies the other way up.
struct PieceBothWays {
    ShapedPiece before;
    ShapedPiece after;
    Unit unit = Unit::mm;  ///< in which is said what was lost
};
/// Two pieces that are looked at side by side and kept elsewhere.
struct ShapedPair {
    const ShapedPiece& before;
    const ShapedPiece& after;
    ShapedPair(const ShapedPiece& first, const ShapedPiece& second) : before(first), after(second) {}
    ShapedPair(const PieceBothWays& both) : before(both.before), after(both.after) {}
};

/// By how much the cloth may differ, mm^2: a shape that strays by the tolerance `fold` along half of its
/// outline has as much more or less of it.
double area_allowed(const ShapedPiece& shaped, const Tolerances& tolerances);

struct JudgedPiece {
    ComparedPiece piece;
    std::vector<Loss> losses;
    std::vector<Loss> changes;
};
JudgedPiece compared_piece(const PieceBothWays& both, const Tolerances& tolerances);

}  // namespace dartwright
