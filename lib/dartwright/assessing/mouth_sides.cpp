#include "dartwright/assessing/mouth_sides.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/robust_fit.hpp"

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
