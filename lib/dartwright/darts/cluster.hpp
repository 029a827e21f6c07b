#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

enum class ClusterLies {
    radiating,  ///< all point to the pivot of the dart that was shared out
    parallel    ///< once sewn, all lie parallel to the middle one; each turns about its own point
};

/// Between which legs of a parallel cluster the angles count.
enum class ParallelAbout {
    points,  ///< as they are sewn, to the points
    pivot    ///< as if all closed at the pivot that was shared out: off by some tenths of a degree to some
           ///< degrees once sewn, if the dart was backed off. Kept for lists of operations that were made so.
};

/// Parallel darts are parallel this nearly, radians: 0.0000003 degrees. Well above the rounding of a
/// direction, some 1e-12, and of an edge's length when a mouth is turned, 1e-10 of it.
inline constexpr double parallel_within_rad = 5e-9;

struct ClusterRequest {
    std::string piece;
    std::string dart;
    int count = 3;        ///< darts in the cluster, two or more
    double apart_mm = 0;  ///< sewn distance from one mouth to the next, over 0
    std::string to;       ///< the cluster's middle, `EDGE@DISTANCE/FROM`; empty: where the dart is
    ClusterLies lies = ClusterLies::radiating;
    ParallelAbout parallel_about = ParallelAbout::points;
    std::string press;  ///< edge they are pressed towards; empty: as the dart was
    std::string hold;   ///< an edge that stays; empty: chosen by fold, then grain
};

struct ClusterDart {
    std::string name;
    double angle_rad = 0;       ///< at its pivot
    double sewn_angle_rad = 0;  ///< at its point, about which it closes
    double intake_mm = 0;
    double leg_mm = 0;
    double back_off_mm = 0;
};

struct ClusterAccount {
    std::string piece;
    std::string dart;
    double angle_rad = 0;       ///< of the dart before, at its pivot
    double sewn_angle_rad = 0;  ///< at its point
    double old_intake_mm = 0;
    ClusterLies lies = ClusterLies::radiating;
    std::vector<ClusterDart> darts;  ///< in outline order
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct ClusterResult {
    Pattern pattern;
    ClusterAccount account;
};

/// Shares the dart equally among a row of darts, named `DART 1`, `DART 2`, and so on in outline order. Every
/// leg is as long as the middle dart's (the mean of the two middle ones of an even number), or as all can be
/// without reaching beyond the pivot. Radiating darts keep the pivot, and with it all that a split keeps;
/// each is backed off by as much as its legs ask. Equal legs put a point on the line square to its mouth,
/// which goes through the pivot; so parallel darts, of the same legs to 0.001 mm, have their mouths turned to
/// face points of their own, as `repoint` does it: every run keeps its length, the intakes change by some
/// tenths of a millimetre, and the darts cannot be merged again. With a back-off the points lie nearer to the
/// edge than the pivot did, so that equal mouths are wider angles there: the angles of parallel darts are
/// compared with the old dart's at its point, and add up to it about as nearly as the intakes to its own.
/// Parallel is said of the lines that the darts are sewn in, all of them closed about their points: the two
/// legs, mouth to point, on either side of the cloth between neighbouring darts then have one direction (as
/// they have as drawn), to `parallel_within_rad`. The middle one of an odd number stays as it is; of an even
/// number the line midway between the two in the middle keeps its direction. The request is appended to
/// `made`. Throws what split and repoint throw, and BadWords (count under 2, distance not over 0), Impossible
/// (a dart in a corner with no place given, a row longer than its edge, an edge on which darts cannot be made
/// parallel). O(k n log n) for k darts. Requires a sound pattern (problems_of is empty): UnsoundPattern.
ClusterResult cluster(const Pattern& pattern, const ClusterRequest& request);

}  // namespace dartwright
