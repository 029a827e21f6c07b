#pragma once

// Private to this room: where on its run a dart stands.

#include <optional>

#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

struct PlacedDart {
    const Run* run = nullptr;
    double distance = 0;  ///< sewn, from the run's anticlockwise start, mm
};
/// A dart at a corner stands at the end of the run before it. Null if the outline has no run.
PlacedDart placed_dart(const Outline& outline, const std::vector<Run>& runs, std::size_t item);

/// `EDGE@DISTANCE/FROM`, from the nearer end, to a hundredth of a millimetre.
std::string place_words(const PlacedDart& placed);

}  // namespace dartwright
