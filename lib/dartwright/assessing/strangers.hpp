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
