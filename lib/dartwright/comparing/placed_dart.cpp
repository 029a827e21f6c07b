#include "dartwright/comparing/placed_dart.hpp"

#include <cmath>

#include "dartwright/pattern/place.hpp"

namespace dartwright {

std::vector<PlacedDart> placed_darts(const Outline& outline, const std::vector<Run>& runs) {
    std::vector<PlacedDart> out(outline.items.size());
    for (const Run& run : runs) {
        const std::vector<double> inner = dart_distances(outline, run);
        for (std::size_t k = 0; k < inner.size(); ++k) out[run.darts[k]] = {&run, inner[k]};
        for (const std::size_t item : run.corner_darts_after) out[item] = {&run, run.length};
    }
    return out;
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
