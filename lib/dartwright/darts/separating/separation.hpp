#pragma once

// Private to the room: a piece separated in two along a seam from a dart's mouth through its pivot to another
// dart's mouth or to a place, and what things of the whole are called in the parts.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/turning/target_cut.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

struct SeamWanted {
    std::string seam;
    std::optional<double> round_mm;
};

/// One part: its outline begins where the whole's items of it do.
struct SeparatedPart {
    Outline outline;
    std::vector<Run> runs;
    std::vector<Point> polygon;  ///< flattened, before the seam's corner is rounded
    /// The new edges in walking order from the dart's mouth: one if the corner is rounded, else two.
    std::vector<std::string> seam_edges;
};

struct Separation {
    TargetCut cut;
    std::vector<Run> whole_runs;  ///< of the cut's outline
    DartFigures dart;
    std::optional<DartFigures> with;  ///< the other dart, if the seam ends in one
    Point target;
    /// [0] follows the dart in the outline: walked with it, the seam is met at its far end; [1] comes before
    /// it, and the seam is walked in its own direction.
    std::array<SeparatedPart, 2> parts;
    double dart_leg_mm = 0;    ///< of the seam from the dart's mouth to the pivot, before rounding
    double target_leg_mm = 0;  ///< and on to its other end
    double rounded_off_mm = 0;
    bool is_dart_in_corner = false;
    bool is_target_in_corner = false;
};

/// Preconditions: the cut lies free, or ends at a dart of the same pivot; the darts can be moved. Impossible
/// if a part would have no edge, or one edge in two places, if a part lies over itself, or if the rounding
/// is longer than a leg.
Separation separated(const TargetCut& cut, const SeamWanted& wanted, Notes notes);

/// A run of the whole as it lies in a part.
struct PartOfRun {
    std::size_t part = 0;
    const Run* run = nullptr;
    bool has_start = true;  ///< the whole run's own start, and its end
    bool has_end = true;
    double begins = 0;  ///< sewn distance on the whole run at which it begins
};
/// One, or two in the order of the whole run. The separation must outlive the result.
std::vector<PartOfRun> parts_of_run(const Separation& separation, const std::string& edge);

}  // namespace dartwright
