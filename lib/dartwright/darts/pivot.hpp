#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {

/// How much of a dart to move: at most one is set; none means all.
struct DartPart {
    std::optional<double> angle_rad;
    std::optional<double> share;      ///< 0 to 1
    std::optional<double> intake_mm;  ///< the old mouth narrows by so much
};

struct PivotRequest {
    std::string piece;
    std::string dart;
    std::string to;  ///< a place, `EDGE@DISTANCE/FROM`
    DartPart part;
    std::optional<double> back_off_mm;  ///< of the new dart; as the old one's if absent
    std::string hold;                   ///< an edge that stays; empty: chosen by fold, then grain
    std::string name;   ///< of the new dart; empty: the old name for a whole dart, `EDGE dart` for a part
    std::string press;  ///< edge the new dart is pressed towards; empty: as the old one
    /// Name of a seam that the fold becomes first, so that the dart may open in it; empty: the fold stays.
    std::string centre_seam;
};

/// What an operation did.
struct PivotAccount {
    std::string piece;
    std::string dart;  ///< the one moved
    std::string new_dart;
    std::string to;
    double angle_rad = 0;             ///< moved
    double angle_left_rad = 0;        ///< left at the old place
    std::vector<std::string> turned;  ///< runs that turned, wholly or in part, in outline order
    std::vector<std::string> held;    ///< runs that stayed
    double turn_rad = 0;              ///< signed, anticlockwise positive
    std::vector<RunChange> runs;
    double old_intake_mm = 0;        ///< of the dart before
    double new_intake_mm = 0;        ///< of the dart at its new place
    std::vector<std::string> notes;  ///< sentences: what was snapped, chosen or warned of
};
struct PivotResult {
    Pattern pattern;
    PivotAccount account;
};

/// Turns part of a piece about a dart's pivot so that the dart (or a part of it) opens at another place. The
/// request is appended to the pattern's `made` list. Throws Impossible (geometry), UnknownName, BadWords. O(n
/// log n) in the flattened outline's vertices.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
PivotResult pivot(const Pattern& pattern, const PivotRequest& request);

}  // namespace dartwright
