#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/lay_pieces.hpp"
#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// The cloth that pieces are laid on, and how.
struct LayRequest {
    double width_mm = 0;      ///< from selvedge to selvedge
    bool is_folded = true;    ///< lengthwise down the middle; pairs are then cut through both plies at once
    bool is_one_way = false;  ///< a nap or a print: every grain arrow points the same way
    double gap_mm = 5;        ///< left between pieces
};

/// A piece on the cloth. The cloth lies with its fold (or, opened, one selvedge) along x = 0 and its length
/// along y, from y = 0 up.
struct LaidPiece {
    std::string name;
    std::vector<Point> polygon;  ///< anticlockwise
    std::string how;             ///< `on the fold`, `through both plies`, `through the upper ply only`, or
                                 ///< `from the single ply`
    bool is_on_fold = false;
    bool is_mirrored = false;  ///< face down
    Vector grain;              ///< unit, (0, 1) or (0, -1)
};

struct Lay {
    double width_mm = 0;  ///< that pieces may take: half the cloth's if it is folded
    double length_mm = 0;
    /// No lay can be shorter: the area of the pieces divided by the width, and the longest piece.
    double bound_mm = 0;
    double area_mm2 = 0;  ///< of the pieces as laid
    std::vector<LaidPiece> pieces;
    std::vector<std::string> notes;
};

/// Pieces in a strip no wider than the pieces may take, as short as a simple heuristic finds it.
///
/// Every grain arrow lies along the cloth, exactly. Each piece goes to the place where it ends lowest, under
/// or between pieces laid before if there is room, in each of several orders (all of them for four or fewer);
/// the shortest lay is kept. Places across are tried `lay_step_mm` apart, and pieces are kept apart as if
/// each were made of columns `lay_step_mm` wide. No two pieces overlap or come nearer to each other than the
/// gap, and this is tested again on the polygons themselves with exact predicates (std::logic_error if it
/// were not so). The same request gives the same lay.
///
/// Throws BadWords (a width that is none, a negative gap), Impossible (a piece wider than the cloth, with the
/// width that would do). O(orders * pieces^2 * (width / step)^2).
Lay lay(const std::vector<LayPiece>& pieces, const LayRequest& request);

inline constexpr double lay_step_mm = 5;

}  // namespace dartwright
