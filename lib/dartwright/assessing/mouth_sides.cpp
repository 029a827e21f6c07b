#include "dartwright/assessing/mouth_sides.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/robust_fit.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/run_table.hpp"

namespace dartwright {
namespace {

struct Nearest {
    std::optional<std::size_t> part;
    double off = 0;
    void offer(std::size_t index, double distance) {
        if (part && off <= distance) return;
        part = index;
        off = distance;
    }
};

/// Runs whose lengths differ by more than this have their places elsewhere along them, mm: files round to a
/// hundredth, and a quarter of a millimetre moves no place by what could be drawn.
constexpr double same_length_mm = 0.25;
/// A stretch shorter than this does not tell how its part was turned, mm: a tremor of 0.2 mm at its ends
/// turns a part of the size of a bodice by half a millimetre.
constexpr double telling_mm = 50;

/// So many places are looked at, at least, as on the other parts.
constexpr double fewest_places = 8;

PlacePairs pairs_of_stretch(const MatchedPlaces& places, std::size_t stretch) {
    const auto begin = static_cast<std::ptrdiff_t>(places.begins[stretch]);
    const auto end = static_cast<std::ptrdiff_t>(
        stretch + 1 < places.begins.size() ? places.begins[stretch + 1] : places.before.size());
    return {{places.before.begin() + begin, places.before.begin() + end},
            {places.after.begin() + begin, places.after.begin() + end}};
}

struct RunOfBoth {
    const Run* before = nullptr;
    const Run* after = nullptr;
};
bool is_changed(const RunOfBoth& run) {
    return run.before && run.after && std::abs(run.after->length - run.before->length) > same_length_mm;
}
// Nothing beside the stretch was drawn otherwise: no corner at its run's ends, no leg at a mouth that it
// reaches.
bool is_left_alone(const MovedPiece& piece, const RunOfBoth& run, const PartStretch& stretch) {
    const auto is_changed_beside = [&](const std::string& edge) {
        return is_changed({find_run(piece.both.before.runs, edge), find_run(piece.both.after.runs, edge)});
    };
    const double near = narrowest_stretch_mm / std::max(run.after->length, narrowest_stretch_mm);
    const bool is_at_leg =
        std::any_of(piece.moved_mouths.begin(), piece.moved_mouths.end(), [&](const MouthAt& mouth) {
            return mouth.edge == stretch.edge && (std::abs(mouth.share - stretch.from_share) <= near ||
                                                  std::abs(mouth.share - stretch.to_share) <= near);
        });
    return !is_at_leg && !is_changed_beside(run.before->before) && !is_changed_beside(run.before->after);
}

// Places at the same distances from that end of the run.
PlacePairs pairs_from_end(const ShapedPair& both, const RunOfBoth& run, const PartStretch& stretch,
                          RunEnd end) {
    const RunTable before(both.before.piece.outline, *run.before);
    const RunTable after(both.after.piece.outline, *run.after);
    const double shift = end == RunEnd::start ? 0 : run.before->length - run.after->length;
    const double from = stretch.from_share * run.after->length + just_inside_mm;
    const double to = stretch.to_share * run.after->length - just_inside_mm;
    const double count = std::max(fewest_places, std::ceil((to - from) / part_spacing_mm));
    // Those that lie on both.
    const double first = std::max(from, -shift);
    const double last = std::min(to, run.before->length - shift);
    PlacePairs out;
    if (!(first <= last)) return out;
    const int steps = static_cast<int>(count);
    before.add_points(out.from, {first + shift, last + shift, steps});
    after.add_points(out.to, {first, last, steps});
    return out;
}

void append(PlacePairs& all, const PlacePairs& some) {
    all.from.insert(all.from.end(), some.from.begin(), some.from.end());
    all.to.insert(all.to.end(), some.to.begin(), some.to.end());
}

}  // namespace

std::optional<MouthSides> mouth_sides(const RigidParts& parts, const std::vector<Run>& runs,
                                      const MouthAt& at) {
    const Run* run = find_run(runs, at.edge);
    if (!run) return std::nullopt;
    Nearest before;
    Nearest after;
    for (std::size_t i = 0; i < parts.parts.size(); ++i) {
        for (const PartStretch& stretch : parts.parts[i].stretches) {
            // A mouth at a corner lies between two runs.
            const bool is_next = at.share == 1 && stretch.edge == run->after && stretch.from_share == 0;
            if (is_next) after.offer(i, 0);
            if (stretch.edge != at.edge) continue;
            before.offer(i, std::abs(stretch.to_share - at.share));
            after.offer(i, std::abs(stretch.from_share - at.share));
        }
    }
    // As near as a stretch may lie that was too narrow to be a part.
    const double most_off = 2 * narrowest_stretch_mm / std::max(run->length, narrowest_stretch_mm);
    if (!before.part || !after.part || before.off > most_off || after.off > most_off) return std::nullopt;
    return MouthSides{*before.part, *after.part};
}

double most_changed_mm(const ShapedPair& both) {
    double most = 0;
    for (const Run& run : both.before.runs)
        if (const Run* same = find_run(both.after.runs, run.edge))
            most = std::max(most, std::abs(same->length - run.length));
    return most;
}

PartMotions motions_of_part(const MovedPiece& piece, std::size_t part) {
    const MatchedPlaces& places = piece.parts.places[part];
    const std::vector<PartStretch>& stretches = piece.parts.parts[part].stretches;
    PlacePairs all;
    PartMotions out;
    const auto offer = [&out](const PlacePairs& some) {
        const bool is_telling =
            !some.from.empty() && distance(some.from.front(), some.from.back()) >= telling_mm;
        if (is_telling) out.all.push_back(robust_fit(some));
        return is_telling;
    };
    for (std::size_t k = 0; k < stretches.size(); ++k) {
        const RunOfBoth run{find_run(piece.both.before.runs, stretches[k].edge),
                            find_run(piece.both.after.runs, stretches[k].edge)};
        if (is_changed(run)) {
            for (const RunEnd end : {RunEnd::start, RunEnd::end})
                offer(pairs_from_end(piece.both, run, stretches[k], end));
            continue;
        }
        const PlacePairs some = pairs_of_stretch(places, k);
        append(all, some);
        if (offer(some) && is_left_alone(piece, run, stretches[k])) out.is_certain = true;
    }
    out.all.insert(out.all.begin(), all.from.empty() ? robust_motion(places) : robust_fit(all));
    return out;
}

Motion robust_motion(const MatchedPlaces& places) {
    return robust_fit({places.before, places.after});
}

Motion robust_motion(const RigidParts& parts) {
    PlacePairs all;
    for (const MatchedPlaces& places : parts.places) {
        all.from.insert(all.from.end(), places.before.begin(), places.before.end());
        all.to.insert(all.to.end(), places.after.begin(), places.after.end());
    }
    return robust_fit(all);
}

}  // namespace dartwright
