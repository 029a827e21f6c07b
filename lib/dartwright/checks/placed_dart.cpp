#include "dartwright/checks/placed_dart.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/pattern/place.hpp"

namespace dartwright {

PlacedDart placed_dart(const Outline& outline, const std::vector<Run>& runs, std::size_t item) {
    for (const Run& run : runs) {
        const auto inner = std::find(run.darts.begin(), run.darts.end(), item);
        if (inner != run.darts.end()) {
            const auto number = static_cast<std::size_t>(inner - run.darts.begin());
            return {&run, dart_distances(outline, run)[number]};
        }
        const std::vector<std::size_t>& corner = run.corner_darts_after;
        if (std::find(corner.begin(), corner.end(), item) != corner.end()) return {&run, run.length};
    }
    return {};
}

std::string place_words(const PlacedDart& placed) {
    if (!placed.run) return {};
    const bool is_start_nearer = placed.distance <= placed.run->length / 2;
    const double from_end = is_start_nearer ? placed.distance : placed.run->length - placed.distance;
    const double rounded = std::round(from_end * 100) / 100;
    const RunEnd end = is_start_nearer ? RunEnd::start : RunEnd::end;
    return to_text(Place{placed.run->edge, {rounded, false}, name_of_end(*placed.run, end)});
}

}  // namespace dartwright
