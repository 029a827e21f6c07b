#include "dartwright/checks/rigid_parts.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {
namespace {

/// The ends of a stretch are looked at this far inside it, mm, so that rounding cannot put them on the other
/// side of a mouth.
constexpr double inside_mm = 1e-6;
constexpr double fewest_places = 8;

std::vector<double> mouth_shares(const ShapedPiece& shaped, const Run& run) {
    std::vector<double> shares = dart_distances(shaped.piece.outline, run);
    for (double& each : shares) each /= run.length;
    return shares;
}

/// A stretch, and whether the part goes on into the next one.
struct LinkedStretch {
    PartStretch stretch;
    double length_mm = 0;
    bool goes_on = false;
};

// A corner joins what meets there if no dart stands in it, and the same runs meet there after.
bool is_plain_corner(const Run& before, const Run& after) {
    return before.after == after.after && before.corner_darts_after.empty() &&
           after.corner_darts_after.empty();
}

std::vector<LinkedStretch> stretches_of_run(const PieceBothWays& both, const Run& before, const Run& after) {
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
        out.push_back(
            {{before.edge, stops[i], stops[i + 1]}, length, is_last && is_plain_corner(before, after)});
    }
    return out;
}

std::vector<LinkedStretch> all_stretches(const PieceBothWays& both) {
    std::vector<LinkedStretch> out;
    for (const Run& run : both.before.runs) {
        const Run* same = find_run(both.after.runs, run.edge);
        if (!same || !(run.length > 0) || !(same->length > 0)) continue;
        for (LinkedStretch& each : stretches_of_run(both, run, *same)) out.push_back(std::move(each));
    }
    // What a stretch goes on into must begin at its run's start, and be the run that follows.
    for (std::size_t i = 0; i < out.size(); ++i) {
        const PartStretch& next = out[(i + 1) % out.size()].stretch;
        const Run& run = *find_run(both.before.runs, out[i].stretch.edge);
        out[i].goes_on = out[i].goes_on && next.from_share == 0 && next.edge == run.after;
    }
    return out;
}

// So turned that the first stretch begins a part, if any does.
void begin_with_a_part(std::vector<LinkedStretch>& stretches) {
    const auto last_of_part = std::find_if(stretches.begin(), stretches.end(),
                                           [](const LinkedStretch& each) { return !each.goes_on; });
    if (last_of_part != stretches.end()) std::rotate(stretches.begin(), last_of_part + 1, stretches.end());
}

std::vector<Point> places_on(const ShapedPiece& shaped, const PartStretch& stretch, std::size_t count) {
    const Run& run = *find_run(shaped.runs, stretch.edge);
    const double from = stretch.from_share * run.length + inside_mm;
    const double to = stretch.to_share * run.length - inside_mm;
    std::vector<Point> out;
    for (std::size_t k = 0; k <= count; ++k) {
        const double share = static_cast<double>(k) / static_cast<double>(count);
        out.push_back(place_on_run(shaped.piece.outline, run, from + share * (to - from)).point);
    }
    return out;
}

void fit(ComparedPart& part, const PieceBothWays& both) {
    const MatchedPlaces places = places_of(both, part.stretches);
    part.motion = best_fit(places.before, places.after);
    for (std::size_t i = 0; i < places.before.size(); ++i) {
        part.strays_mm =
            std::max(part.strays_mm, distance(apply(part.motion, places.before[i]), places.after[i]));
    }
}

}  // namespace

std::size_t corners_in_common(const std::vector<Run>& before, const std::vector<Run>& after) {
    return static_cast<std::size_t>(std::count_if(before.begin(), before.end(), [&after](const Run& run) {
        const Run* same = find_run(after, run.edge);
        return same && same->after == run.after;
    }));
}

MatchedPlaces places_of(const PieceBothWays& both, const std::vector<PartStretch>& stretches) {
    MatchedPlaces out;
    for (const PartStretch& stretch : stretches) {
        const double length =
            (stretch.to_share - stretch.from_share) * find_run(both.before.runs, stretch.edge)->length;
        const auto count =
            static_cast<std::size_t>(std::max(fewest_places, std::ceil(length / part_spacing_mm)));
        for (const Point p : places_on(both.before, stretch, count)) out.before.push_back(p);
        for (const Point p : places_on(both.after, stretch, count)) out.after.push_back(p);
    }
    return out;
}

std::vector<ComparedPart> rigid_parts(const PieceBothWays& both) {
    std::vector<LinkedStretch> stretches = all_stretches(both);
    begin_with_a_part(stretches);
    std::vector<ComparedPart> parts;
    bool goes_on = false;
    for (const LinkedStretch& each : stretches) {
        if (!goes_on) parts.emplace_back();
        parts.back().stretches.push_back(each.stretch);
        parts.back().length_mm += each.length_mm;
        goes_on = each.goes_on;
    }
    for (ComparedPart& part : parts) fit(part, both);
    return parts;
}

}  // namespace dartwright
