#include "dartwright/assessing/likeness.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/robust_fit.hpp"
#include "dartwright/comparing/rigid_parts.hpp"

namespace dartwright {
namespace {

/// Two edges are left aside only if so much of all is left to know the pattern by.
constexpr double least_left = 0.4;

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
        none_.drawn_mm = way_round(drawn);
        none_.around_mm = std::max(way_round(known), none_.drawn_mm);
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

double way_round(const ShapedPiece& shaped) {
    double around = 0;
    for (const Run& run : shaped.runs) around += run.length;
    return around;
}

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

}  // namespace dartwright
