#include "dartwright/assessing/strangers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/assessing/robust_fit.hpp"
#include "dartwright/checks/rigid_parts.hpp"

namespace dartwright {
namespace {

/// A hand that misses every point by 2 mm along and across makes edges longer or shorter by up to this, mm;
/// of a smaller piece as much of the way around. More than that apart are the edges of blocks for measures
/// that differ by 4 per cent.
constexpr double hand_length_mm = 5;
constexpr double hand_length_share = 0.0065;
/// And places on them lie off by up to half as much.
constexpr double place_per_length = 0.5;

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

/// Two edges are left aside only of as many that both have, and only if so much of all is left to know the
/// pattern by.
constexpr std::size_t fewest_edges = 4;
constexpr double least_left = 0.4;

/// What a length of a piece differs by that was made smaller or larger first, mm.
constexpr double same_length_mm = 1e-6;

/// Of a piece of fewer edges each may be longer or shorter by what a slip makes, as a share of the way
/// around.
constexpr double slip_length_share = 0.02;

/// Scales nearer to each other than this are one: a bodice's longest edge differs by a hand's line.
constexpr double same_scale = 1e-3;

double around_all(const std::vector<Likeness>& pieces) {
    double sum = 0;
    for (const Likeness& each : pieces) sum += each.around_mm;
    return sum;
}
double near_all(const std::vector<Likeness>& pieces) {
    double sum = 0;
    for (const Likeness& each : pieces) sum += each.near_mm;
    return sum;
}

std::size_t end_of_stretch(const MatchedPlaces& places, std::size_t stretch) {
    return stretch + 1 < places.begins.size() ? places.begins[stretch + 1] : places.before.size();
}

std::size_t index_of_run(const std::vector<Run>& runs, const std::string& edge) {
    return static_cast<std::size_t>(find_run(runs, edge) - runs.data());
}

double share_near(const MatchedPlaces& places, std::size_t stretch, const Motion& motion, double reach_mm) {
    const std::size_t begin = places.begins[stretch];
    const std::size_t end = end_of_stretch(places, stretch);
    std::size_t near = 0;
    for (std::size_t k = begin; k < end; ++k)
        if (distance(apply(motion, places.before[k]), places.after[k]) <= reach_mm) ++near;
    return static_cast<double>(near) / static_cast<double>(end - begin);
}

double drawn_around(const ShapedPiece& shaped) {
    double around = 0;
    for (const Run& run : shaped.runs) around += run.length;
    return around;
}

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
    const double around = drawn_around(known);
    const double hand = known.runs.size() < fewest_edges
                            ? slip_length_share * around
                            : std::min(hand_length_mm, hand_length_share * around);
    const double length = std::max(hand, plan.exercise.ladders.lengths.back().within);
    return {length, place_per_length * length, is_divided(plan, known)};
}

/// How a draft is looked at: how many times too large, and how many times a hand's reach is allowed.
struct Look {
    double scale = 1;
    double reach = 1;
    bool is_by_lengths = false;  ///< alone: no piece is more alike than that, and it is soon known
};

/// A piece of the draft as one that is known, the way round that is most alike.
struct Pair {
    std::size_t known = 0;
    std::size_t drawn = 0;
    Likeness likeness;
};

// Every edge that is as long taken for the known one's.
Likeness likeness_by_lengths(const DraftedPiece& drawn, const KnownAs& as, double scale, double reach_mm) {
    Likeness out;
    out.drawn_mm = drawn_around(drawn.shaped) / scale;
    out.around_mm = std::max(drawn_around(as.known), out.drawn_mm);
    for (std::size_t i = 0; i < as.known.runs.size(); ++i) {
        const double length = as.known.runs[i].length;
        const auto& run = as.runs.drawn[i];
        const bool is_as_long =
            run && std::abs(drawn.shaped.runs[*run].length / scale - length) <= reach_mm + same_length_mm;
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

class Likenesses {
  public:
    Likenesses(const ExercisePlan& plan, const std::vector<ShapedPiece>& known_pieces,
               const std::vector<DraftedPiece>& drawn)
        : known_(known_pieces), drawn_(drawn) {
        for (const ShapedPiece& known : known_pieces) {
            signatures_.push_back(signatures_of(known));
            reaches_.push_back(reach_of(plan, known));
        }
    }

    // None for what nobody would take for that piece.
    std::optional<Pair> pair(std::size_t known, std::size_t drawn, const Look& look) const {
        std::optional<Pair> best;
        const HandReach reach{look.reach * reaches_[known].length, look.reach * reaches_[known].place,
                              reaches_[known].is_divided};
        for (const RunMatching& way : matched_runs(signatures_[known], drawn_[drawn].runs)) {
            if (!(way.misfit < worst_misfit)) continue;
            const KnownAs as{known_[known], way};
            Likeness here =
                look.is_by_lengths
                    ? likeness_by_lengths(drawn_[drawn], as, look.scale, reach.length)
                    : likeness(as.known, matched_piece(drawn_[drawn], as, look.scale).shaped, reach);
            if (!best || here.near_mm > best->likeness.near_mm) best = Pair{known, drawn, std::move(here)};
        }
        return best;
    }

    std::vector<Pair> pairs(const Look& look) const {
        std::vector<Pair> out;
        for (std::size_t k = 0; k < known_.size(); ++k)
            for (std::size_t d = 0; d < drawn_.size(); ++d)
                if (auto found = pair(k, d, look)) out.push_back(std::move(*found));
        std::stable_sort(out.begin(), out.end(), [](const Pair& a, const Pair& b) {
            return a.likeness.near_mm > b.likeness.near_mm;
        });
        return out;
    }

    // How many times too large it may be: by what each known piece might be, in the middle of its edges'
    // ratios, which an edge out of true does not move, and by all of them together. And by the cloth of all
    // pieces of a state, which a hand's tremor makes no larger as it makes edges longer.
    std::vector<double> scales(const std::vector<std::vector<std::size_t>>& states) const {
        std::vector<double> out;
        double drawn_mm2 = 0;
        for (const DraftedPiece& each : drawn_) drawn_mm2 += cloth_area(each.shaped.piece);
        for (const std::vector<std::size_t>& state : states) {
            if (drawn_.size() < 2 || state.size() != drawn_.size()) continue;
            double known_mm2 = 0;
            for (const std::size_t k : state) known_mm2 += cloth_area(known_[k].piece);
            add(out, std::sqrt(drawn_mm2 / known_mm2));
        }
        for (std::size_t k = 0; k < known_.size(); ++k) {
            std::vector<Candidate> candidates;
            for (std::size_t d = 0; d < drawn_.size(); ++d)
                candidates.push_back({d, matched_runs(signatures_[k], drawn_[d].runs).front()});
            std::stable_sort(
                candidates.begin(), candidates.end(),
                [](const Candidate& a, const Candidate& b) { return a.way.misfit < b.way.misfit; });
            for (std::size_t i = 0; i < std::min(most_candidates, candidates.size()); ++i)
                if (candidates[i].way.misfit < worst_misfit) add_scales(out, k, candidates[i]);
        }
        return out;
    }

  private:
    static void add(std::vector<double>& scales, double scale) {
        const bool is_scale = std::isfinite(scale) && scale > 0;
        const bool is_there = std::any_of(scales.begin(), scales.end(), [scale](double each) {
            return std::abs(each / scale - 1) < same_scale;
        });
        if (is_scale && !is_there) scales.push_back(scale);
    }
    void add_scales(std::vector<double>& scales, std::size_t known, const Candidate& as) const {
        const auto& [drawn, way] = as;
        const std::vector<Run>& runs = known_[known].runs;
        std::vector<double> ratios;
        for (std::size_t i = 0; i < runs.size(); ++i)
            if (way.drawn[i] && runs[i].length > 0)
                ratios.push_back(drawn_[drawn].shaped.runs[*way.drawn[i]].length / runs[i].length);
        if (ratios.empty()) return;
        const auto middle = ratios.begin() + static_cast<std::ptrdiff_t>(ratios.size() / 2);
        std::nth_element(ratios.begin(), middle, ratios.end());
        add(scales, *middle);
        add(scales, drawn_around(drawn_[drawn].shaped) / drawn_around(known_[known]));
    }

    const std::vector<ShapedPiece>& known_;
    const std::vector<DraftedPiece>& drawn_;
    std::vector<std::vector<RunSignature>> signatures_;
    std::vector<HandReach> reaches_;
};

// The pieces of a state, each as the piece of the draft that is most alike, and that only once: what else is
// drawn is too many, and what is not drawn is missing.
std::vector<Likeness> likenesses_in(const std::vector<std::size_t>& state, const std::vector<Pair>& pairs) {
    std::vector<const Pair*> taken;
    std::vector<Likeness> out;
    for (const Pair& pair : pairs) {
        const bool is_in = std::find(state.begin(), state.end(), pair.known) != state.end();
        const bool is_taken = std::any_of(taken.begin(), taken.end(), [&](const Pair* each) {
            return each->known == pair.known || each->drawn == pair.drawn;
        });
        if (!is_in || is_taken) continue;
        taken.push_back(&pair);
        out.push_back(pair.likeness);
    }
    return out;
}

using ShareOf = double (*)(const std::vector<Likeness>&);
bool is_any_state(const ExercisePlan& plan, const std::vector<Pair>& pairs, ShareOf share, double least) {
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

}  // namespace

namespace {

// By the edges of the first, in order. One that the second lacks is none.
std::vector<bool> edges_as_long(const ShapedPair& both, double reach_mm) {
    std::vector<bool> out;
    for (const Run& run : both.before.runs) {
        const Run* same = find_run(both.after.runs, run.edge);
        out.push_back(same && std::abs(run.length - same->length) <= reach_mm);
    }
    return out;
}

// The corners, by the edge before each, beside which all edges lie that are not as long.
std::vector<std::size_t> slipped_corners(const std::vector<bool>& edge_is_as_long) {
    const std::size_t count = edge_is_as_long.size();
    const auto off = std::count(edge_is_as_long.begin(), edge_is_as_long.end(), false);
    std::vector<std::size_t> out;
    if (count < fewest_edges || off == 0) return out;
    for (std::size_t i = 0; i < count; ++i)
        if ((edge_is_as_long[i] ? 0 : 1) + (edge_is_as_long[(i + 1) % count] ? 0 : 1) == off)
            out.push_back(i);
    return out;
}

bool has_darts(const ShapedPiece& shaped) {
    const std::vector<OutlineItem>& items = shaped.piece.outline.items;
    return std::any_of(items.begin(), items.end(),
                       [](const OutlineItem& each) { return each.as_dart() != nullptr; });
}

// Stretches of a part that lie together, from `begin` to before `end`.
struct Bound {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// A stretch of a part by the edge that it lies on.
struct OnEdge {
    std::size_t edge = 0;
    bool is_as_long = false;
    bool is_aside = false;  ///< beside the corner where a slip was made
};

// The two edges that a slip drew otherwise hold nothing together: from another point a piece is divided
// otherwise, and what lies on either side of that seam is turned as what it hangs on by its other end.
std::vector<Bound> bound_together(const std::vector<OnEdge>& stretches) {
    std::vector<Bound> out;
    for (std::size_t k = 0; k < stretches.size(); ++k) {
        const bool goes_on = k > 0 && !stretches[k].is_aside && !stretches[k - 1].is_aside;
        if (!goes_on) out.push_back({k, k});
        out.back().end = k + 1;
    }
    return out;
}

// What is bound together as its edges of the right length have it.
std::optional<Motion> motion_by(const MatchedPlaces& places, const std::vector<OnEdge>& stretches,
                                const Bound& bound) {
    PlacePairs some;
    for (std::size_t stretch = bound.begin; stretch < bound.end; ++stretch) {
        if (!stretches[stretch].is_as_long) continue;
        for (std::size_t k = places.begins[stretch]; k < end_of_stretch(places, stretch); ++k) {
            some.from.push_back(places.before[k]);
            some.to.push_back(places.after[k]);
        }
    }
    if (some.from.empty()) return std::nullopt;
    return robust_fit(some);
}

class LikenessOf {
  public:
    LikenessOf(const ShapedPiece& known, const ShapedPiece& drawn, const HandReach& reach)
        : known_(known),
          reach_(reach),
          edge_is_as_long_(edges_as_long({known, drawn}, reach.length)),
          parts_(rigid_parts({known, drawn})) {
        for (const Run& run : known.runs) {
            const Run* same = find_run(drawn.runs, run.edge);
            none_.edges.push_back({run.length, 0, same ? same->length : 0});
        }
        none_.drawn_mm = drawn_around(drawn);
        none_.around_mm = std::max(drawn_around(known), none_.drawn_mm);
        // A round that no mouth ends hangs together the other way.
        const bool is_round = parts_.parts.size() == 1 && !has_darts(known) && !has_darts(drawn);
        if (reach.is_divided && !is_round) corners_ = slipped_corners(edge_is_as_long_);
    }

    Likeness likeness() const {
        Likeness best = parted_at(std::nullopt);
        for (const std::size_t corner : corners_) {
            Likeness other = parted_at(corner);
            if (other.near_mm > best.near_mm) best = std::move(other);
        }
        return best;
    }

  private:
    std::vector<OnEdge> on_edges(std::size_t part, std::optional<std::size_t> corner) const {
        std::vector<OnEdge> out;
        for (const PartStretch& each : parts_.parts[part].stretches) {
            const std::size_t edge = index_of_run(known_.runs, each.edge);
            const bool is_aside = corner && (edge == *corner || edge == (*corner + 1) % known_.runs.size());
            out.push_back({edge, edge_is_as_long_[edge], is_aside});
        }
        return out;
    }
    Likeness parted_at(std::optional<std::size_t> corner) const {
        Likeness out = none_;
        for (std::size_t part = 0; part < parts_.parts.size(); ++part) {
            const std::vector<OnEdge> stretches = on_edges(part, corner);
            for (const Bound& bound : bound_together(stretches)) add_near(out, part, stretches, bound);
        }
        for (const Likeness::Edge& edge : out.edges) out.near_mm += edge.near_mm;
        return out;
    }
    void add_near(Likeness& out, std::size_t part, const std::vector<OnEdge>& stretches,
                  const Bound& bound) const {
        const MatchedPlaces& places = parts_.places[part];
        const auto motion = motion_by(places, stretches, bound);
        for (std::size_t k = bound.begin; motion && k < bound.end; ++k) {
            if (!stretches[k].is_as_long) continue;
            Likeness::Edge& edge = out.edges[stretches[k].edge];
            const PartStretch& stretch = parts_.parts[part].stretches[k];
            edge.near_mm += (stretch.to_share - stretch.from_share) * edge.length_mm *
                            share_near(places, k, *motion, reach_.place);
        }
    }

    const ShapedPiece& known_;
    HandReach reach_;
    std::vector<bool> edge_is_as_long_;
    RigidParts parts_;
    Likeness none_;
    std::vector<std::size_t> corners_;
};

}  // namespace

Likeness likeness(const ShapedPiece& known, const ShapedPiece& drawn, const HandReach& reach) {
    return LikenessOf(known, drawn, reach).likeness();
}

double share_alike(const std::vector<Likeness>& pieces) {
    const double around = around_all(pieces);
    return around > 0 ? near_all(pieces) / around : 0;
}

namespace {

double known_around(const Likeness& piece) {
    double known = 0;
    for (const Likeness::Edge& each : piece.edges) known += each.length_mm;
    return known;
}

// Of the longer way round, as it was drawn without the two edges as it was drawn with them.
double left_around(const Likeness& piece, const Likeness::Edge& one, const Likeness::Edge& other) {
    return std::max(known_around(piece) - one.length_mm - other.length_mm,
                    piece.drawn_mm - one.drawn_mm - other.drawn_mm);
}

// Two edges of the right length alone are in many patterns: what lacks an edge as well leaves no more.
std::size_t edges_of_both(const Likeness& piece) {
    return static_cast<std::size_t>(std::count_if(piece.edges.begin(), piece.edges.end(),
                                                  [](const auto& each) { return each.drawn_mm > 0; }));
}

enum class LeftAside { edges_beside_a_corner, any_two_edges };

double share_without_two(const std::vector<Likeness>& pieces, LeftAside which) {
    const double around = around_all(pieces);
    const double near = near_all(pieces);
    double known = 0;
    for (const Likeness& piece : pieces) known += known_around(piece);
    double most = share_alike(pieces);
    for (const Likeness& piece : pieces) {
        const std::size_t count = piece.edges.size();
        if (edges_of_both(piece) < fewest_edges) continue;
        const std::size_t reach = which == LeftAside::any_two_edges ? count - 1 : 1;
        for (std::size_t i = 0; i < count; ++i) {
            for (std::size_t on = 1; on <= reach; ++on) {
                const Likeness::Edge& one = piece.edges[i];
                const Likeness::Edge& other = piece.edges[(i + on) % count];
                const double left = around - piece.around_mm + left_around(piece, one, other);
                if (left >= least_left * known)
                    most = std::max(most, (near - one.near_mm - other.near_mm) / left);
            }
        }
    }
    return most;
}

}  // namespace

double share_but_for_a_slip(const std::vector<Likeness>& pieces) {
    return share_without_two(pieces, LeftAside::edges_beside_a_corner);
}
double share_but_for_two_edges(const std::vector<Likeness>& pieces) {
    return share_without_two(pieces, LeftAside::any_two_edges);
}

double nearest_unit(double ratio) {
    // Those that are taken for one another: mm, cm and inches.
    constexpr std::array<double, 7> units{1, 10, 0.1, 25.4, 1 / 25.4, 2.54, 1 / 2.54};
    return *std::min_element(units.begin(), units.end(), [ratio](double a, double b) {
        return std::abs(ratio / a - 1) < std::abs(ratio / b - 1);
    });
}

namespace {

bool is_at_odd_scale(const Likenesses& all, const ExercisePlan& plan, double scale) {
    std::vector<double> scales = all.scales(plan.states);
    scales.push_back(scale);
    return std::any_of(scales.begin(), scales.end(), [&](double each) {
        return is_known_at_odd_scale(all, plan, each, true) && is_known_at_odd_scale(all, plan, each, false);
    });
}

double most_of_any_state(const ExercisePlan& plan, const std::vector<Pair>& pairs) {
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

Whose whose(const ExercisePlan& plan, const std::vector<DraftedPiece>& drawn, double scale) {
    const Likenesses all(plan, plan.known, drawn);
    const double unit = nearest_unit(scale);
    if (has_whole_piece(all, plan, drawn.size(), unit)) return {};
    const bool is_known = is_known_at_unit(all, plan, unit, true) && is_known_at_unit(all, plan, unit, false);
    return {!is_known && !is_at_odd_scale(all, plan, scale), is_cutting_line(plan, all, drawn, unit)};
}

}  // namespace dartwright
