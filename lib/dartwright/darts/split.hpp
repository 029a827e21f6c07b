#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// One place of a split and the share of the dart's angle that opens there.
struct SplitPlace {
    std::string to;     ///< a place, `EDGE@DISTANCE/FROM`
    double share = 0;   ///< of the original angle, over 0, at most 1
    std::string name;   ///< of the dart there; empty: `EDGE dart`, with a number if that is taken
    std::string press;  ///< edge it is pressed towards; empty: as the old one
};

struct SplitRequest {
    std::string piece;
    std::string dart;
    std::vector<SplitPlace> places;
    std::optional<double> back_off_mm;  ///< of every new dart; as the old one's if absent
    std::string hold;                   ///< an edge that stays; empty: chosen by fold, then grain
    /// Name of a seam that the fold becomes first, so that a dart may open in it; empty: the fold stays.
    std::string centre_seam;
};

/// A dart that an operation opened.
struct OpenedDart {
    std::string name;
    std::string to;
    double angle_rad = 0;
    double intake_mm = 0;
};

struct SplitAccount {
    std::string piece;
    std::string dart;
    double angle_rad = 0;       ///< of the dart before
    double angle_left_rad = 0;  ///< left at the old place
    double old_intake_mm = 0;
    std::vector<OpenedDart> opened;  ///< in the order of the request
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct SplitResult {
    Pattern pattern;
    SplitAccount account;
};

/// Shares a dart among several places of its piece at once. The cuts are judged on the piece as it is, and
/// only the final shape for overlaps. The order of the places does not matter but for a rigid motion of the
/// piece. The request is appended to `made`. Throws Impossible (geometry, shares over 100 % together),
/// UnknownName, BadWords. O(p n log n) for p places, in the flattened outline's vertices.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
SplitResult split(const Pattern& pattern, const SplitRequest& request);

}  // namespace dartwright
