#pragma once

#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// To each side of the opening, unless told otherwise, mm. Our choice: a hand's breadth.
inline constexpr double flare_span_mm = 100;

struct CloseFlareRequest {
    std::string piece;
    std::string dart;
    std::string to;                  ///< a place on the hem, `EDGE@DISTANCE/FROM`
    std::string hold;                ///< an edge that stays; empty: chosen by fold, then grain
    double span_mm = flare_span_mm;  ///< to each side of the opening, over which the hem is redrawn
};

struct CloseFlareAccount {
    std::string piece;
    std::string dart;
    std::string to;
    std::string hem;        ///< the edge that grew
    double angle_rad = 0;   ///< of the dart, now in the hem
    double opening_mm = 0;  ///< straight across the slash at the hem
    double added_mm = 0;    ///< to the hem's sewn length
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct CloseFlareResult {
    Pattern pattern;
    CloseFlareAccount account;
};

/// Slashes from the dart's pivot to a place on the hem, closes the dart, and leaves the slash open as flare:
/// the hem is drawn smooth over it and grows by what the account says; every other run keeps its sewn length.
/// The request is appended to `made`. Throws what pivot throws, and BadWords (span under 1 mm). O(n log n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
CloseFlareResult close_as_flare(const Pattern& pattern, const CloseFlareRequest& request);

}  // namespace dartwright
