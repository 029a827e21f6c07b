#pragma once

// Private to this room: whether a draft is the exercise's pattern at all, before anything of it is judged.
//
// The rule. A student's draft differs from the exercise's pattern by a slip or two, in the edges beside it;
// somebody else's differs in most edges at once. So the draft is held against the pattern as it is before
// each task and after the last, each part between mouths wherever it was turned to. Where, of a piece that
// was divided, no edges are of other lengths but those beside one corner, these end a part as a mouth does:
// so it is where a piece was divided from another dart. A place on an edge is the exercise's if the edge is
// as long, and the place lies where that part has it, as nearly as a hand draws.
//
// 1. Of all that is drawn of a state, but for the two edges beside one corner, most of the way round is the
//    exercise's; or one piece is it nearly all round, whatever the others are.
// 2. At a scale that is no mistaken unit all of this must be more exact, since a scale that is free makes two
//    patterns more alike: nearly all of it is the exercise's, or still more of several pieces but for the two
//    edges beside one corner; or one piece, or all but two edges, to less than half of what a hand misses.
//
// A draft for which neither holds is a stranger's.
//
// 3. Of a draft of which no piece is the exercise's nearly all round: if most of the way round it is its
//    cutting line, and that clearly more than it is its stitching line, then that was traced.

#include <vector>

#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/assessing/matched_piece.hpp"

namespace dartwright {

/// By how much a hand may miss, mm.
struct HandReach {
    double length = 0;        ///< of an edge
    double place = 0;         ///< of a place on it
    bool is_divided = false;  ///< the known piece came of one that a task divided or opened
};

/// How much of each edge of a known piece lies in another as it does in that.
struct Likeness {
    struct Edge {
        double length_mm = 0;
        double near_mm = 0;
        double drawn_mm = 0;  ///< as it was drawn; 0 where it was not
    };
    std::vector<Edge> edges;  ///< in outline order
    double around_mm = 0;     ///< of the longer way round
    double drawn_mm = 0;      ///< as it was drawn, all round
    double near_mm = 0;       ///< of all edges
};
/// Both with the same names of edges. An edge of another length is not there, and does not turn its part.
/// Of a piece that was divided, where all of those lie beside one corner, its two edges hold nothing together
/// either: each side of them lies wherever it was turned to, as beside a mouth. O((n + p) log n) for n curves
/// and p places.
Likeness likeness(const ShapedPiece& known, const ShapedPiece& drawn, const HandReach& reach);

/// 0 to 1, of all of them together. 0 without pieces.
double share_alike(const std::vector<Likeness>& pieces);
/// The same, the two edges beside the worst corner left aside where enough is left to
/// know the pattern by.
double share_but_for_a_slip(const std::vector<Likeness>& pieces);
/// The same, any two edges of a piece left aside.
double share_but_for_two_edges(const std::vector<Likeness>& pieces);

/// How many times too large a draft in the nearest mistaken unit is: 10, 1/10, 25.4, ..., or 1.
double nearest_unit(double ratio);

struct Whose {
    bool is_strangers = false;
    bool is_cutting_line = false;
};
/// The rule above. `scale` is how many times too large it is drawn. Precondition: scale > 0.
/// O(k d) likenesses for k pieces known and d drawn, and O(k^2 d) where the scale is its own.
Whose whose(const ExercisePlan& plan, const std::vector<DraftedPiece>& drawn, double scale);

}  // namespace dartwright
