#pragma once

// Private to this room: a draft in the exercise's own names, the right way up, at its size.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise_plan.hpp"

namespace dartwright {

struct MatchedPiece {
    std::size_t drawn = 0;             ///< in the draft
    ShapedPiece shaped;                ///< closed, edges and piece named as in the exercise
    bool is_mirrored = false;          ///< it was drawn the other way up
    double gap_mm = 0;                 ///< by which its outline is open, at the exercise's size
    std::vector<std::string> renamed;  ///< `"A" is the side`: what was recognised by shape
};

/// How large the draft is drawn.
struct DraftScale {
    double drawn = 1;  ///< so many times too large
    double unit = 1;   ///< what of it a mistaken unit explains: 10, 1/10, 25.4, 2.54, ...
    bool is_off = false;
};

struct MatchedDraft {
    std::vector<std::optional<MatchedPiece>> pieces;  ///< by the finished pattern's
    DraftScale scale;
    std::vector<std::string> extra_pieces;  ///< the draft's that are none of the exercise's
    bool is_strangers = false;  ///< no piece of it has the shape of any that the exercise begins or ends with
    /// A place of a matched piece as it was drawn.
    Point as_drawn(std::size_t piece, Point p) const;
};

/// std::invalid_argument for a draft in which nothing is drawn.
MatchedDraft matched_draft(const ExercisePlan& plan, const Pattern& draft);

}  // namespace dartwright
