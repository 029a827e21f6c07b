#pragma once

// Private to this room: a draft in the exercise's own names, the right way up, at its size.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/assessing/matched_piece.hpp"
#include "dartwright/assessing/strangers.hpp"

namespace dartwright {

/// How large the draft is drawn.
struct DraftScale {
    double drawn = 1;  ///< so many times too large
    double unit = 1;   ///< what of it a mistaken unit explains: 10, 1/10, 25.4, 2.54, ...
    bool is_off = false;
};

struct MatchedDraft {
    std::vector<DraftedPiece> drawn;                  ///< as they were drawn
    std::vector<std::optional<MatchedPiece>> pieces;  ///< by the finished pattern's
    DraftScale scale;
    std::vector<std::string> extra_pieces;  ///< the draft's that are none of the exercise's
    Whose whose;                            ///< by the rule of strangers.hpp
    /// A place of a matched piece as it was drawn.
    Point as_drawn(std::size_t piece, Point p) const;
};

/// The piece of the draft as that known one, of those ways round the one in which edges and darts lie
/// nearest; between equals the first. Precondition: there is a way.
MatchedPiece matched_as(const ShapedPiece& known, const std::vector<RunMatching>& ways,
                        const DraftedPiece& drawn, double scale);

/// std::invalid_argument for a draft in which nothing is drawn.
MatchedDraft matched_draft(const ExercisePlan& plan, const Pattern& draft);

}  // namespace dartwright
