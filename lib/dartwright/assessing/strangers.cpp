#include "dartwright/assessing/strangers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/assessing/likenesses.hpp"

namespace dartwright {
namespace {

/// As much must be the exercise's, of all that is drawn but for a slip. Of 2,000 bodices copied by a hand to
/// 2 mm, every other one with a piece missing, the least had 0.91; of 4,000 for measures that differ by 4 to
/// 15 per cent, or stretched one way by 8 to 20, the most had 0.73.
constexpr double least_share = 0.8;
/// One piece of which so much is the exercise's, edges beside a corner counted, is it. Of those strangers the
/// most had 0.83.
constexpr double whole_piece_share = 0.9;
/// At a scale that is no mistaken unit: of all. Or nearly everything of several pieces but for a slip; or, to
/// so much of a hand's reach, of one piece, or of all but two edges. Of 1,000 bodices copied by a hand to 2
/// mm and put to another scale the least had 0.98 but for a slip; of 13,000 of those strangers the most had
/// 0.93.
constexpr double least_share_at_odd_scale = 0.9;
constexpr double least_exact_share = 0.95;
constexpr double exact_reach = 0.4;

/// As much must be the exercise's cutting line, and so much less its stitching line: by narrow allowances the
/// two cannot be told apart.
constexpr double least_cutting_share = 0.9;
constexpr double clearly_less_share = 0.15;

using ShareOf = double (*)(const std::vector<Likeness>&);
bool is_any_state(const ExercisePlan& plan, const std::vector<LikePair>& pairs, ShareOf share, double least) {
    return std::any_of(plan.states.begin(), plan.states.end(), [&](const std::vector<std::size_t>& state) {
        return share(likenesses_in(state, pairs)) >= least;
    });
}

double share_of_best_piece(const std::vector<Likeness>& pieces) {
    double most = 0;
    for (const Likeness& each : pieces) most = std::max(most, share_alike({each}));
    return most;
}

// Most drafts are known by their first piece.
bool has_whole_piece(const Likenesses& all, const ExercisePlan& plan, std::size_t count, double scale) {
    const auto is_whole = [&](std::size_t known, std::size_t drawn, bool is_by_lengths) {
        const auto pair = all.pair(known, drawn, {scale, 1, is_by_lengths});
        return pair && share_alike({pair->likeness}) >= whole_piece_share;
    };
    for (std::size_t d = 0; d < count; ++d)
        for (std::size_t k = 0; k < plan.known.size(); ++k)
            if (is_whole(k, d, true) && is_whole(k, d, false)) return true;
    return false;
}

// One piece alone has too few edges to leave two of them aside where the scale is free.
double share_of_several_but_for_a_slip(const std::vector<Likeness>& pieces) {
    return pieces.size() > 1 ? share_but_for_a_slip(pieces) : 0;
}

// All but for a slip.
bool is_known_at_unit(const Likenesses& all, const ExercisePlan& plan, double unit, bool is_by_lengths) {
    return is_any_state(plan, all.pairs({unit, 1, is_by_lengths}), share_but_for_a_slip, least_share);
}

bool is_known_at_odd_scale(const Likenesses& all, const ExercisePlan& plan, double scale,
                           bool is_by_lengths) {
    const auto all_of_it = all.pairs({scale, 1, is_by_lengths});
    if (is_any_state(plan, all_of_it, share_alike, least_share_at_odd_scale) ||
        is_any_state(plan, all_of_it, share_of_several_but_for_a_slip, least_exact_share))
        return true;
    const auto exact = all.pairs({scale, exact_reach, is_by_lengths});
    return is_any_state(plan, exact, share_but_for_two_edges, least_exact_share) ||
           is_any_state(plan, exact, share_of_best_piece, least_exact_share);
}

bool is_at_odd_scale(const Likenesses& all, const ExercisePlan& plan, double scale) {
    std::vector<double> scales = all.scales(plan.states);
    scales.push_back(scale);
    return std::any_of(scales.begin(), scales.end(), [&](double each) {
        return is_known_at_odd_scale(all, plan, each, true) && is_known_at_odd_scale(all, plan, each, false);
    });
}

double most_of_any_state(const ExercisePlan& plan, const std::vector<LikePair>& pairs) {
    double most = 0;
    for (const std::vector<std::size_t>& state : plan.states)
        most = std::max(most, share_alike(likenesses_in(state, pairs)));
    return most;
}

bool is_cutting_line(const ExercisePlan& plan, const Likenesses& stitched,
                     const std::vector<DraftedPiece>& drawn, double unit) {
    const std::vector<ShapedPiece>& traced = plan.traced->of(plan.known);
    if (!plan.traced->is_any()) return false;
    const Likenesses cut(plan, traced, drawn);
    if (most_of_any_state(plan, cut.pairs({unit, 1, true})) < least_cutting_share) return false;
    const double share = most_of_any_state(plan, cut.pairs({unit, 1, false}));
    return share >= least_cutting_share &&
           most_of_any_state(plan, stitched.pairs({unit, 1, false})) <= share - clearly_less_share;
}

}  // namespace

double nearest_unit(double ratio) {
    // Those that are taken for one another: mm, cm and inches.
    constexpr std::array<double, 7> units{1, 10, 0.1, 25.4, 1 / 25.4, 2.54, 1 / 2.54};
    return *std::min_element(units.begin(), units.end(), [ratio](double a, double b) {
        return std::abs(ratio / a - 1) < std::abs(ratio / b - 1);
    });
}

Whose whose(const ExercisePlan& plan, const std::vector<DraftedPiece>& drawn, double scale) {
    const Likenesses all(plan, plan.known, drawn);
    const double unit = nearest_unit(scale);
    if (has_whole_piece(all, plan, drawn.size(), unit)) return {};
    const bool is_known = is_known_at_unit(all, plan, unit, true) && is_known_at_unit(all, plan, unit, false);
    return {!is_known && !is_at_odd_scale(all, plan, scale), is_cutting_line(plan, all, drawn, unit)};
}

}  // namespace dartwright
