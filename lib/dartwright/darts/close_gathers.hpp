#pragma once

#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// How the cloth of a dart that is not sewn is taken in.
enum class TakenIn { ease, gathers };

/// To each side of the mouth, unless told otherwise, mm. Our choice: a hand's breadth in all.
inline constexpr double gathers_span_mm = 50;
/// More fullness than this share of the stretch it is eased into is said. Common practice, no source: firm
/// cloth does not take more without puckers.
inline constexpr double most_ease = 0.1;

struct CloseGathersRequest {
    std::string piece;
    std::string dart;
    TakenIn as = TakenIn::gathers;
    double span_mm = gathers_span_mm;  ///< to each side of the mouth
};

struct CloseGathersAccount {
    std::string piece;
    std::string dart;
    std::string edge;  ///< in which the fullness is
    double intake_mm = 0;
    double angle_rad = 0;        ///< of the dart that is gone
    double fullness_mm = 0;      ///< gathered or eased away
    double sewn_mm = 0;          ///< of the stretch it is taken into
    bool has_from_notch = true;  ///< none where the stretch ends in a corner
    bool has_to_notch = true;
    double from_mm = 0;  ///< sewn distances of the stretch from the run's anticlockwise start
    double to_mm = 0;
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct CloseGathersResult {
    Pattern pattern;
    CloseGathersAccount account;
};

/// Takes a dart out and its cloth in as ease or gathers: the mouth is bridged by one fair curve over the span
/// on each side, and what that is longer than the edge was sewn becomes fullness of the stretch, so that
/// every run keeps its sewn length to rounding and every seam its difference. Notches mark the stretch, on
/// the piece and on the side of each seam that the edge is sewn to. The request is appended to `made`. Throws
/// Impossible (a dart in a corner, another dart at the mouth, a bridge shorter than the edge), UnknownName,
/// BadWords (span under 1 mm). O(n log n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
CloseGathersResult close_as_gathers(const Pattern& pattern, const CloseGathersRequest& request);

}  // namespace dartwright
