#include "dartwright/assessing/likenesses.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {
namespace {

/// A hand that misses every point by 2 mm along and across makes edges longer or shorter by up to this, mm;
/// of a smaller piece as much of the way around. More than that apart are the edges of blocks for measures
/// that differ by 4 per cent.
constexpr double hand_length_mm = 5;
constexpr double hand_length_share = 0.0065;
/// And places on them lie off by up to half as much.
constexpr double place_per_length = 0.5;

/// What a length of a piece differs by that was made smaller or larger first, mm.
constexpr double cut_to_scale_mm = 1e-6;

/// Of a piece of fewer edges each may be longer or shorter by what a slip makes, as a share of the way
/// around.
constexpr double slip_length_share = 0.02;

/// Scales nearer to each other than this are one: a bodice's longest edge differs by a hand's line.
constexpr double same_scale = 1e-3;

// It has edges that none has of the pieces handed out.
bool is_divided(const ExercisePlan& plan, const ShapedPiece& known) {
    const auto is_handed_out = [&](const Run& run) {
        const std::vector<std::size_t>& start = plan.states.front();
        return std::any_of(start.begin(), start.end(), [&](std::size_t piece) {
            return find_run(plan.known[piece].runs, run.edge) != nullptr;
        });
    };
    return !std::all_of(known.runs.begin(), known.runs.end(), is_handed_out);
}

// What the exercise's ladder still gives marks for is no other pattern's either.
HandReach reach_of(const ExercisePlan& plan, const ShapedPiece& known) {
    const double around = way_round(known);
    const double hand = known.runs.size() < fewest_edges
                            ? slip_length_share * around
                            : std::min(hand_length_mm, hand_length_share * around);
    const double length = std::max(hand, plan.exercise.ladders.lengths.back().within);
    return {length, place_per_length * length, is_divided(plan, known)};
}

// Every edge that is as long taken for the known one's.
Likeness likeness_by_lengths(const DraftedPiece& drawn, const KnownAs& as, double scale, double reach_mm) {
    Likeness out;
    out.drawn_mm = way_round(drawn.shaped) / scale;
    out.around_mm = std::max(way_round(as.known), out.drawn_mm);
    for (std::size_t i = 0; i < as.known.runs.size(); ++i) {
        const double length = as.known.runs[i].length;
        const auto& run = as.runs.drawn[i];
        const bool is_as_long =
            run && std::abs(drawn.shaped.runs[*run].length / scale - length) <= reach_mm + cut_to_scale_mm;
        out.edges.push_back(
            {length, is_as_long ? length : 0, run ? drawn.shaped.runs[*run].length / scale : 0});
        out.near_mm += out.edges.back().near_mm;
    }
    return out;
}

/// A piece of the draft that may be a known one. Of a bodice's two, names that were exchanged hide which; of
/// more than that, however many are drawn, the scale is not guessed.
struct Candidate {
    std::size_t drawn = 0;
    RunMatching way;
};
constexpr std::size_t most_candidates = 2;

void add_scale(std::vector<double>& scales, double scale) {
    const bool is_scale = std::isfinite(scale) && scale > 0;
    const bool is_there = std::any_of(scales.begin(), scales.end(), [scale](double each) {
        return std::abs(each / scale - 1) < same_scale;
    });
    if (is_scale && !is_there) scales.push_back(scale);
}
}  // namespace

Likenesses::Likenesses(const ExercisePlan& plan, const std::vector<ShapedPiece>& known_pieces,
                       const std::vector<DraftedPiece>& drawn)
    : known_(known_pieces), drawn_(drawn) {
    for (const ShapedPiece& known : known_pieces) {
        signatures_.push_back(signatures_of(known));
        reaches_.push_back(reach_of(plan, known));
    }
}

std::optional<LikePair> Likenesses::pair(std::size_t known, std::size_t drawn, const DraftLook& look) const {
    std::optional<LikePair> best;
    const HandReach reach{look.reach * reaches_[known].length, look.reach * reaches_[known].place,
                          reaches_[known].is_divided};
    for (const RunMatching& way : matched_runs(signatures_[known], drawn_[drawn].runs)) {
        if (!(way.misfit < worst_misfit)) continue;
        const KnownAs as{known_[known], way};
        Likeness here = look.is_by_lengths
                            ? likeness_by_lengths(drawn_[drawn], as, look.scale, reach.length)
                            : likeness(as.known, matched_piece(drawn_[drawn], as, look.scale).shaped, reach);
        if (!best || here.near_mm > best->likeness.near_mm) best = LikePair{known, drawn, std::move(here)};
    }
    return best;
}

std::vector<LikePair> Likenesses::pairs(const DraftLook& look) const {
    std::vector<LikePair> out;
    for (std::size_t k = 0; k < known_.size(); ++k)
        for (std::size_t d = 0; d < drawn_.size(); ++d)
            if (auto found = pair(k, d, look)) out.push_back(std::move(*found));
    std::stable_sort(out.begin(), out.end(), [](const LikePair& a, const LikePair& b) {
        return a.likeness.near_mm > b.likeness.near_mm;
    });
    return out;
}

std::vector<double> Likenesses::scales(const std::vector<std::vector<std::size_t>>& states) const {
    std::vector<double> out;
    double drawn_mm2 = 0;
    for (const DraftedPiece& each : drawn_) drawn_mm2 += cloth_area(each.shaped.piece);
    for (const std::vector<std::size_t>& state : states) {
        if (drawn_.size() < 2 || state.size() != drawn_.size()) continue;
        double known_mm2 = 0;
        for (const std::size_t k : state) known_mm2 += cloth_area(known_[k].piece);
        add_scale(out, std::sqrt(drawn_mm2 / known_mm2));
    }
    for (std::size_t k = 0; k < known_.size(); ++k) {
        std::vector<Candidate> candidates;
        for (std::size_t d = 0; d < drawn_.size(); ++d)
            candidates.push_back({d, matched_runs(signatures_[k], drawn_[d].runs).front()});
        std::stable_sort(candidates.begin(), candidates.end(),
                         [](const Candidate& a, const Candidate& b) { return a.way.misfit < b.way.misfit; });
        for (std::size_t i = 0; i < std::min(most_candidates, candidates.size()); ++i)
            if (candidates[i].way.misfit < worst_misfit)
                add_scales(out, k, candidates[i].drawn, candidates[i].way);
    }
    return out;
}

void Likenesses::add_scales(std::vector<double>& scales, std::size_t known, std::size_t drawn,
                            const RunMatching& way) const {
    const std::vector<Run>& runs = known_[known].runs;
    std::vector<double> ratios;
    for (std::size_t i = 0; i < runs.size(); ++i)
        if (way.drawn[i] && runs[i].length > 0)
            ratios.push_back(drawn_[drawn].shaped.runs[*way.drawn[i]].length / runs[i].length);
    if (ratios.empty()) return;
    const auto middle = ratios.begin() + static_cast<std::ptrdiff_t>(ratios.size() / 2);
    std::nth_element(ratios.begin(), middle, ratios.end());
    add_scale(scales, *middle);
    add_scale(scales, way_round(drawn_[drawn].shaped) / way_round(known_[known]));
}

std::vector<Likeness> likenesses_in(const std::vector<std::size_t>& state,
                                    const std::vector<LikePair>& pairs) {
    std::vector<const LikePair*> taken;
    std::vector<Likeness> out;
    for (const LikePair& pair : pairs) {
        const bool is_in = std::find(state.begin(), state.end(), pair.known) != state.end();
        const bool is_taken = std::any_of(taken.begin(), taken.end(), [&](const LikePair* each) {
            return each->known == pair.known || each->drawn == pair.drawn;
        });
        if (!is_in || is_taken) continue;
        taken.push_back(&pair);
        out.push_back(pair.likeness);
    }
    return out;
}

}  // namespace dartwright
