#pragma once

// Private to this room: a draft measured against what was asked, before anything of it is judged. Where one
// fault shows in several measures, it is told here which of them it belongs to.

#include "dartwright/assessing/matched_draft.hpp"
#include "dartwright/comparing/rigid_parts.hpp"

namespace dartwright {

struct RunFact {
    std::size_t piece = 0;
    std::string edge;
    double expected_mm = 0;
    std::optional<double> found_mm;
    double off_mm = 0;  ///< what no leg and no corner of a neighbour explains
    double own_mm = 0;  ///< of that, what no seam is judged by
};

struct SeamFact {
    const Seam* seam = nullptr;
    std::array<double, 2> lengths_mm{};
    double ease_mm = 0;        ///< signed
    double difference_mm = 0;  ///< second - first - ease
    double off_mm = 0;         ///< from the difference of the finished pattern, as far as it is judged here
    bool is_there = true;      ///< every edge that it joins is
};

struct DartFact {
    const AskedDart* asked = nullptr;
    std::optional<StandingDart> found;
    double legs_off_mm = 0;  ///< the more of the two differences of its legs, beyond what is expected
    double bisector_off_mm = 0;
    Point pivot;           ///< where the pivot is in the draft, as the part before the mouth carries it
    Point used_pivot;      ///< the one it is drawn to, else that
    double kink_deg = 0;   ///< of the edge over the mouth, closed about the point or the pivot, the less
    double angle_rad = 0;  ///< about the used pivot
    std::optional<double> turned_rad;  ///< of the part after the mouth against the one before
    std::optional<Point> centre;       ///< about which that was turned, where the pivot was missed
    double centre_off_mm = 0;
    double aim_off_mm = 0;  ///< how far it aims beside the pivot
};

struct ClosedFact {
    const AskedClosed* asked = nullptr;
    std::optional<StandingDart> left;  ///< what is open there
    /// Of the finished pieces the one that the draft's piece was taken for.
    std::optional<std::size_t> piece = {};
    bool is_there = false;  ///< the piece that it was closed in
};

struct PieceFacts {
    RigidParts parts;                 ///< from the piece before (or the finished one) to the draft's
    RigidParts from_finished;         ///< from the finished one
    std::vector<StandingDart> extra;  ///< darts that nobody asked for
};

struct DraftFacts {
    const ExercisePlan* plan = nullptr;
    MatchedDraft draft;
    std::vector<PieceFacts> pieces;
    std::vector<RunFact> runs;
    std::vector<SeamFact> seams;
    std::vector<DartFact> darts;
    std::vector<ClosedFact> closed;

    const Ladder& lengths() const { return plan->exercise.ladders.lengths; }
    const Ladder& angles() const { return plan->exercise.ladders.angles; }
    const RunFact* run(std::size_t piece, const std::string& edge) const;
    /// Whether the legs of the dart are judged to be unequal, by their criterion or a check.
    bool has_legs_off(const DartFact& dart) const;
    /// Whether the dart was drawn anew while the one that it replaces is open still, and is judged for that.
    bool has_mouth_off(const DartFact& dart) const;
    bool is_copied(const DartFact& dart) const;
    bool has_pivot_off(const DartFact& dart) const;
    /// Whether lengths or darts of the piece are off, so that its area and shape follow from them.
    bool has_fault(std::size_t piece) const;
    /// Whether the run, or one beside it, is of another length, or a dart in it has other legs.
    bool is_redrawn(std::size_t piece, const std::string& edge) const;
};

/// What a dart of the draft that is none of the exercise's is called, so that it is none of them.
std::string other_name(const std::string& dart);

/// std::invalid_argument for a draft in which nothing is drawn.
DraftFacts facts_of(const ExercisePlan& plan, const Pattern& draft);

}  // namespace dartwright
