#pragma once

// Private to this room: the pieces of a draft beside the known ones of an exercise, each as it might be that.
// Covered by strangers_test.cpp.

#include <optional>
#include <vector>

#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/assessing/likeness.hpp"
#include "dartwright/assessing/matched_piece.hpp"

namespace dartwright {

/// How a draft is looked at: how many times too large, and how many times a hand's reach is allowed.
struct DraftLook {
    double scale = 1;
    double reach = 1;
    bool is_by_lengths = false;  ///< alone: no piece is more alike than that, and it is soon known
};

/// A piece of the draft as one that is known, the way round that is most alike.
struct LikePair {
    std::size_t known = 0;
    std::size_t drawn = 0;
    Likeness likeness;
};

class Likenesses {
  public:
    /// The pieces must outlive this.
    Likenesses(const ExercisePlan& plan, const std::vector<ShapedPiece>& known_pieces,
               const std::vector<DraftedPiece>& drawn);

    /// None for what nobody would take for that piece.
    std::optional<LikePair> pair(std::size_t known, std::size_t drawn, const DraftLook& look) const;
    /// Of every piece known with every one drawn, the most alike first.
    std::vector<LikePair> pairs(const DraftLook& look) const;
    /// How many times too large it may be: by what each known piece might be, in the middle of its edges'
    /// ratios, which an edge out of true does not move, and by all of them together. And by the cloth of all
    /// pieces of a state, which a hand's tremor makes no larger as it makes edges longer.
    std::vector<double> scales(const std::vector<std::vector<std::size_t>>& states) const;

  private:
    void add_scales(std::vector<double>& scales, std::size_t known, std::size_t drawn,
                    const RunMatching& way) const;

    const std::vector<ShapedPiece>& known_;
    const std::vector<DraftedPiece>& drawn_;
    std::vector<std::vector<RunSignature>> signatures_;
    std::vector<HandReach> reaches_;
};

/// The pieces of a state, each as the piece of the draft that is most alike, and that only once: what else is
/// drawn is too many, and what is not drawn is missing.
std::vector<Likeness> likenesses_in(const std::vector<std::size_t>& state,
                                    const std::vector<LikePair>& pairs);

}  // namespace dartwright
