#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// The new seam's notches lie so far to each side of the pivot unless told otherwise, mm. Common practice, no
/// source: near enough that the ease of a rounded seam cannot drift.
inline constexpr double seam_notch_mm = 50;

struct CloseSeamRequest {
    std::string piece;
    std::string dart;
    std::string with;                ///< a second dart of the same pivot; or
    std::string to;                  ///< a place, `EDGE@DISTANCE/FROM`: one of the two
    std::string first_name;          ///< of the part with the fold (or what `hold` names); empty: the piece's
    std::string second_name;         ///< of the other; empty: chosen by where it lies
    std::string seam;                ///< its name, and its edges'; empty: `DART seam`
    std::string hold;                ///< an edge of the first part; empty: chosen by fold, then grain
    std::optional<double> round_mm;  ///< the seam's corner is rounded so far to each side of the pivot
    double notch_mm = seam_notch_mm;
};

struct PartOfPiece {
    std::string name;
    int quantity = 0;  ///< to cut; 0 if that is not decided
    bool has_fold = false;
    double area_mm2 = 0;
    double seam_mm = 0;              ///< sewn length of its side of the new seam
    std::vector<std::string> edges;  ///< its runs, in outline order
};

struct CloseSeamAccount {
    std::string piece;
    std::string dart;
    std::string with;
    std::string to;
    std::string seam;
    std::array<PartOfPiece, 2> parts;
    double angle_rad = 0;         ///< of the dart, now in the seam
    double with_angle_rad = 0;    ///< of the second, 0 without one
    double rounded_off_mm = 0;    ///< what the rounding took off each side
    std::vector<RunChange> runs;  ///< of the whole, after: in both parts together
    std::vector<std::string> notes;
};
struct CloseSeamResult {
    Pattern pattern;
    CloseSeamAccount account;
};

/// Separates the piece in two along a seam from the dart's mouth to its pivot and on to the second dart's
/// mouth or to the place (a princess seam, a yoke): the darts' cloth lies between the parts and is cut away.
/// Legs are first drawn straight to the pivot. Both parts keep their grain's direction, with an arrow that
/// stays 5 mm clear of the outline and of dart legs where the part has room, a shorter one or one beside
/// the whole's if need be; notches, allowances, marks and seams follow, divided where an edge is; the part
/// without the fold is cut as a pair. The new seam's sides are as long as each other to rounding and have
/// notches to both sides of the pivot; its corner there is rounded if asked, else each side is two edges
/// that meet in it. Cloth area stays, but for what the rounding moves from one side of the seam to the
/// other or takes off. The request is appended to `made`.
/// Throws UnknownName, BadWords (neither or both of `with` and `to`; a name that is taken), Impossible
/// (different pivots, a blocked cut, both ends in one edge, a third dart of the same pivot, a rounding longer
/// than a leg) and what movable darts do. O(n log n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
CloseSeamResult close_as_seam(const Pattern& pattern, const CloseSeamRequest& request);

}  // namespace dartwright
