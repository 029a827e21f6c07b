#pragma once

// Private to the library: where on its run a dart stands.

#include <vector>

#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

struct PlacedDart {
    const Run* run = nullptr;
    double distance = 0;  ///< sewn, from the run's anticlockwise start, mm
};
/// By outline item; of items that are no darts the run is null. A dart at a corner stands at the end of the
/// run before it. O(items). The runs must outlive the result.
std::vector<PlacedDart> placed_darts(const Outline& outline, const std::vector<Run>& runs);

/// `EDGE@DISTANCE/FROM`, from the nearer end, to a hundredth of a millimetre.
std::string place_words(const PlacedDart& placed);

}  // namespace dartwright
