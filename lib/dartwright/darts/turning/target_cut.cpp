#include "dartwright/darts/turning/target_cut.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

struct CutChain {
    Chain chain;
    std::size_t target = 0;
};

CutChain chain_cut_at(const Outline& outline, const TargetChosen& target) {
    const std::vector<Run> runs = runs_of(outline);
    const Run& run = *find_run(runs, target.edge);
    CutChain out{chain_of(outline), 0};
    if (target.at_start) {
        out.target = run.items.front();
        return out;
    }
    if (target.at_end) {
        out.target = (run.items.back() + 1) % out.chain.size();
        return out;
    }
    const RunPlace place = place_on_run(outline, run, target.distance);
    // A place at a joint of the run's items cuts nothing; nearer than this a sliver would be left by
    // rounding.
    const double length_mm = length_of_item(outline, place.item);
    if (place.along_item <= sum_rounding_mm) {
        out.target = place.item;
        return out;
    }
    if (place.along_item >= length_mm - sum_rounding_mm) {
        out.target = (place.item + 1) % out.chain.size();
        return out;
    }
    CutItem halves = cut_item(out.chain[place.item], place.along_item);
    const auto at = out.chain.begin() + static_cast<std::ptrdiff_t>(place.item);
    const auto next = out.chain.erase(at);
    out.target = place.item + halves.before.size();
    halves.before.insert(halves.before.end(), halves.after.begin(), halves.after.end());
    out.chain.insert(next, halves.before.begin(), halves.before.end());
    return out;
}

std::size_t dart_item(const Outline& outline, const std::string& name) {
    std::size_t i = 0;
    while (!outline.items[i].as_dart() || outline.items[i].as_dart()->name != name) ++i;
    return i;
}

std::vector<Point> polygon_between(const TargetCut& cut, std::size_t first_item, std::size_t end_vertex) {
    const std::vector<Point>& points = cut.polygon.flat.points;
    std::vector<Point> out{points[cut.polygon.first_vertex[cut.dart] + 1]};
    std::size_t v = cut.polygon.first_vertex[first_item];
    out.push_back(points[v]);
    while (v != end_vertex) {
        v = (v + 1) % points.size();
        out.push_back(points[v]);
    }
    return out;
}

Chain items_between(const Chain& chain, std::size_t first, std::size_t end) {
    Chain out;
    for (std::size_t i = first; i != end; i = (i + 1) % chain.size()) out.push_back(chain[i]);
    return out;
}

bool has_edge(const Chain& chain, const std::string& edge) {
    return std::any_of(chain.begin(), chain.end(), [&](const ChainItem& each) {
        return each.item.as_edge() && each.item.as_edge()->edge == edge;
    });
}

enum class DartsLie { after, before, both };
DartsLie where_edge_lies(const PartsOfCut& parts, const std::string& edge) {
    const bool is_after = has_edge(parts.after_dart, edge);
    if (is_after && has_edge(parts.before_dart, edge)) return DartsLie::both;
    return is_after ? DartsLie::after : DartsLie::before;
}

Sentence nearest_reachable(const Piece& piece, const TargetChosen& target, const std::string& dart) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = *find_run(runs, target.edge);
    const RunEnd from = end_named(run, target.place.from).value_or(RunEnd::start);
    const double asked = from == RunEnd::start ? target.distance : run.length - target.distance;
    const double step = std::max(1.0, std::ceil(run.length / 200));
    Sentence best;
    double least = run.length * 2;
    for (double at = step; at < run.length; at += step) {
        if (std::abs(at - asked) >= least) continue;
        try {
            const Place place{run.edge, {at, false}, name_of_end(run, from)};
            const TargetChosen chosen = target_chosen(piece, runs, to_text(place));
            const TargetCut cut = cut_at_target(piece.outline, chosen, dart);
            if (!what_blocks_cut(cut.polygon, cut.outline, cut.dart, cut.target).empty()) continue;
            least = std::abs(at - asked);
            best = told(place);
        } catch (const Impossible&) {
            continue;  // beside a mouth
        }
    }
    return best;
}

}  // namespace

TargetCut cut_at_target(const Outline& outline, const TargetChosen& target, const std::string& dart) {
    CutChain cut = chain_cut_at(outline, target);
    TargetCut out;
    out.target = cut.target;
    out.outline = outline_of(std::move(cut.chain));
    out.dart = dart_item(out.outline, dart);
    out.polygon = wedge_polygon(out.outline);
    return out;
}

TargetCut cut_between_darts(const Outline& outline, std::size_t dart, std::size_t with,
                            const std::string& so_that) {
    const DartItem& one = *outline.items[dart].as_dart();
    const DartItem& other = *outline.items[with].as_dart();
    const double apart = distance(one.turning_point(), other.turning_point());
    if (apart != 0) {
        throw Impossible("the pivots of " + quoted(one.name) + " and " + quoted(other.name) + " are " +
                             difference_told(apart) + " apart, so that " + so_that,
                         "give both darts one pivot first");
    }
    TargetCut cut{outline, dart, with, wedge_polygon(outline)};
    const Sentence trouble = trouble_with(cut.polygon, cut.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    return cut;
}

void refuse_blocked_cut(const Piece& piece, const TargetCut& cut, const TargetChosen& target) {
    const Sentence blocked = what_blocks_cut(cut.polygon, cut.outline, cut.dart, cut.target);
    if (blocked.empty()) return;
    const std::string dart = cut.outline.items[cut.dart].as_dart()->name;
    const Sentence nearest = nearest_reachable(piece, target, dart);
    throw Impossible(
        blocked, nearest.empty()
                     ? Sentence("no place on \"" + target.edge + "\" can be reached straight from this pivot")
                     : "the nearest place on that edge that can be reached is " + nearest);
}

PartsOfCut parts_of(const TargetCut& cut) {
    const Chain chain = chain_of(cut.outline);
    const std::size_t after = (cut.dart + 1) % chain.size();
    return {items_between(chain, after, cut.target), items_between(chain, cut.target, cut.dart)};
}

std::vector<Point> polygon_after_dart(const TargetCut& cut) {
    const std::size_t after = (cut.dart + 1) % cut.outline.items.size();
    return polygon_between(cut, after, cut.polygon.first_vertex[cut.target]);
}

std::vector<Point> polygon_before_dart(const TargetCut& cut) {
    return polygon_between(cut, cut.target, cut.polygon.first_vertex[cut.dart]);
}

bool is_after_dart_held(const Piece& piece, const TargetCut& cut, const std::string& hold) {
    const PartsOfCut parts = parts_of(cut);
    if (!hold.empty()) {
        run_named(runs_of(piece.outline), hold, piece.name);
        const DartsLie lies = where_edge_lies(parts, hold);
        if (lies != DartsLie::both) return lies == DartsLie::after;
        throw Impossible("the edge \"" + hold + "\" lies on both sides of the cut",
                         "hold an edge that lies on one side");
    }
    std::vector<std::string> edges = fold_edges(piece);
    if (piece.grain && !piece.grain->along.empty()) edges.push_back(piece.grain->along);
    for (const std::string& edge : edges) {
        const DartsLie lies = where_edge_lies(parts, edge);
        if (lies != DartsLie::both) return lies == DartsLie::after;
    }
    if (piece.grain) {
        const Point centre = middle(piece.grain->from, piece.grain->to);
        // A grain drawn over a dart, or beside the piece, belongs to the part nearest to it.
        const double from_after = distance_outside(polygon_after_dart(cut), centre);
        const double from_before = distance_outside(polygon_before_dart(cut), centre);
        if (from_after != from_before) return from_after < from_before;
    }
    throw Impossible("neither the fold nor the grain says which part stays", "say so with an edge to hold");
}

bool is_grain_turning(const Piece& piece, const Chain& turning, const Chain& held, const TurningPart& part) {
    const std::string& along = piece.grain->along;
    const bool turns = !along.empty() && has_edge(turning, along);
    const bool stays = !along.empty() && has_edge(held, along);
    if (turns != stays) return turns;
    return is_turning(part, middle(piece.grain->from, piece.grain->to));
}

}  // namespace dartwright
