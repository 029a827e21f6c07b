#include "dartwright/comparing/rigid_parts.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/run_index.hpp"
#include "dartwright/pattern/run_table.hpp"

namespace dartwright {
namespace {

constexpr double fewest_places = 8;

std::vector<double> mouth_shares(const ShapedPiece& shaped, const Run& run) {
    std::vector<double> shares = dart_distances(shaped.piece.outline, run);
    for (double& each : shares) each /= run.length;
    return shares;
}

/// A stretch of a run that both have, and whether the part goes on into the next one.
struct LinkedStretch {
    PartStretch stretch;
    const Run* before = nullptr;
    const Run* after = nullptr;
    double length_mm = 0;
    bool goes_on = false;
};

// A corner joins what meets there if no dart stands in it, and the same runs meet there after.
bool is_plain_corner(const Run& before, const Run& after) {
    return before.after == after.after && before.corner_darts_after.empty() &&
           after.corner_darts_after.empty();
}

std::vector<LinkedStretch> stretches_of_run(const ShapedPair& both, const Run& before, const Run& after) {
    std::vector<double> stops = mouth_shares(both.before, before);
    for (const double share : mouth_shares(both.after, after)) stops.push_back(share);
    stops.push_back(0);
    stops.push_back(1);
    std::sort(stops.begin(), stops.end());
    std::vector<LinkedStretch> out;
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
        const double length = (stops[i + 1] - stops[i]) * before.length;
        const bool is_last = stops[i + 1] == 1;
        if (length < narrowest_stretch_mm && !(stops[i] == 0 && is_last)) continue;
        out.push_back({{before.edge, stops[i], stops[i + 1]},
                       &before,
                       &after,
                       length,
                       is_last && is_plain_corner(before, after)});
    }
    return out;
}

std::vector<LinkedStretch> all_stretches(const ShapedPair& both) {
    std::vector<LinkedStretch> out;
    const RunIndex runs_after(both.after.runs);
    for (const Run& run : both.before.runs) {
        const Run* same = runs_after.find(run.edge);
        if (!same || !(run.length > 0) || !(same->length > 0)) continue;
        for (LinkedStretch& each : stretches_of_run(both, run, *same)) out.push_back(std::move(each));
    }
    // What a stretch goes on into must begin at its run's start, and be the run that follows.
    for (std::size_t i = 0; i < out.size(); ++i) {
        const PartStretch& next = out[(i + 1) % out.size()].stretch;
        out[i].goes_on = out[i].goes_on && next.from_share == 0 && next.edge == out[i].before->after;
    }
    return out;
}

// So turned that the first stretch begins a part, if any does.
void begin_with_a_part(std::vector<LinkedStretch>& stretches) {
    const auto last_of_part = std::find_if(stretches.begin(), stretches.end(),
                                           [](const LinkedStretch& each) { return !each.goes_on; });
    if (last_of_part != stretches.end()) std::rotate(stretches.begin(), last_of_part + 1, stretches.end());
}

// The tables of one run in both patterns; kept for as long as the stretches asked about lie on it.
class RunsOfStretches {
  public:
    explicit RunsOfStretches(const ShapedPair& both) : both_(both) {}

    void add_places(MatchedPlaces& places, const LinkedStretch& each) {
        if (each.before != run_) {
            run_ = each.before;
            before_.emplace(both_.before.piece.outline, *each.before);
            after_.emplace(both_.after.piece.outline, *each.after);
        }
        const double steps = std::max(fewest_places, std::ceil(each.length_mm / part_spacing_mm));
        for (const auto& [points, table, run] :
             {Side{places.before, *before_, *each.before}, Side{places.after, *after_, *each.after}})
            table.add_points(points,
                             {each.stretch.from_share * run.length + just_inside_mm,
                              each.stretch.to_share * run.length - just_inside_mm, static_cast<int>(steps)});
    }

  private:
    struct Side {
        std::vector<Point>& points;
        const RunTable& table;
        const Run& run;
    };

    ShapedPair both_;
    const Run* run_ = nullptr;
    std::optional<RunTable> before_;
    std::optional<RunTable> after_;
};

void fit(ComparedPart& part, const MatchedPlaces& places) {
    part.motion = best_fit(places.before, places.after);
    for (std::size_t i = 0; i < places.before.size(); ++i) {
        part.strays_mm =
            std::max(part.strays_mm, distance(apply(part.motion, places.before[i]), places.after[i]));
    }
}

ShapedPiece laid_flat(const ShapedPiece& shaped) {
    Piece flat = shaped.piece;
    for (OutlineItem& item : flat.outline.items)
        if (EdgeItem* edge = item.as_edge()) edge->fullness = 0;
    std::vector<Run> runs = runs_of(flat.outline);
    return {std::move(flat), std::move(runs)};
}

double fullness_of(const ShapedPiece& shaped, const Run& run) {
    double sum = 0;
    for (const std::size_t item : run.items) sum += shaped.piece.outline.items[item].as_edge()->fullness;
    return sum;
}

bool has_other_fullness(const ShapedPair& both) {
    const RunIndex runs_after(both.after.runs);
    return std::any_of(both.before.runs.begin(), both.before.runs.end(), [&](const Run& run) {
        const Run* same = runs_after.find(run.edge);
        return same && fullness_of(both.before, run) != fullness_of(both.after, *same);
    });
}

double most_strayed(const RigidParts& rigid) {
    double most = 0;
    for (const ComparedPart& part : rigid.parts) most = std::max(most, part.strays_mm);
    return most;
}

// The share of the run's sewn length at that share of its length laid flat: fullness is taken off each of its
// items evenly.
double sewn_share(double flat_share, const ShapedPiece& sewn, const ShapedPiece& flat, std::size_t run) {
    const Run& sewn_run = sewn.runs[run];
    const Run& flat_run = flat.runs[run];
    if (flat_share == 0 || flat_share == 1) return flat_share;
    std::vector<double> from = item_distances(flat.piece.outline, flat_run);
    std::vector<double> to = item_distances(sewn.piece.outline, sewn_run);
    from.push_back(flat_run.length);
    to.push_back(sewn_run.length);
    const double at = flat_share * flat_run.length;
    const auto next = std::upper_bound(from.begin() + 1, from.end() - 1, at);
    const auto i = static_cast<std::size_t>(next - from.begin());
    const double width = from[i] - from[i - 1];
    const double along = width > 0 ? std::clamp((at - from[i - 1]) / width, 0.0, 1.0) : 0;
    return (to[i - 1] + along * (to[i] - to[i - 1])) / sewn_run.length;
}

RigidParts parts_laid_flat(const ShapedPair& both) {
    const PieceBothWays flat{laid_flat(both.before), laid_flat(both.after)};
    RigidParts out = rigid_parts(flat);
    for (ComparedPart& part : out.parts) {
        for (PartStretch& stretch : part.stretches) {
            const auto run = std::find_if(flat.before.runs.begin(), flat.before.runs.end(),
                                          [&](const Run& each) { return each.edge == stretch.edge; });
            const auto index = static_cast<std::size_t>(run - flat.before.runs.begin());
            stretch.from_share = sewn_share(stretch.from_share, both.before, flat.before, index);
            stretch.to_share = sewn_share(stretch.to_share, both.before, flat.before, index);
        }
    }
    return out;
}

}  // namespace

RigidParts rigid_parts_whatever_fullness(const PieceBothWays& both, const Tolerances& tolerances) {
    RigidParts sewn = rigid_parts(both);
    if (most_strayed(sewn) <= tolerances.fold_mm || !has_other_fullness(both)) return sewn;
    RigidParts flat = parts_laid_flat(both);
    return most_strayed(flat) < most_strayed(sewn) ? flat : sewn;
}

RigidParts rigid_parts(const ShapedPair& both) {
    std::vector<LinkedStretch> stretches = all_stretches(both);
    begin_with_a_part(stretches);
    RigidParts out;
    RunsOfStretches runs(both);
    bool goes_on = false;
    for (const LinkedStretch& each : stretches) {
        if (!goes_on) {
            out.parts.emplace_back();
            out.places.emplace_back();
        }
        out.parts.back().stretches.push_back(each.stretch);
        out.parts.back().length_mm += each.length_mm;
        out.places.back().begins.push_back(out.places.back().before.size());
        runs.add_places(out.places.back(), each);
        goes_on = each.goes_on;
    }
    for (std::size_t i = 0; i < out.parts.size(); ++i) fit(out.parts[i], out.places[i]);
    return out;
}

}  // namespace dartwright
