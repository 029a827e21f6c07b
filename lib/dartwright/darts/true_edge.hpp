#pragma once

#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct TrueEdgeRequest {
    std::string piece;
    std::string edge;
    double span_mm = true_span_mm;  ///< how far to each side of a corner the edge is redrawn
};

/// A corner within the edge that was drawn smooth.
struct SmoothedCorner {
    Point at;
    double corner_deg = 0;  ///< before
};
struct TrueEdgeAccount {
    std::string piece;
    std::string edge;
    std::vector<SmoothedCorner> corners;  ///< in outline order
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct TrueEdgeResult {
    Pattern pattern;
    TrueEdgeAccount account;
};

/// Draws every corner within an edge smooth that is over the tolerance `kink`, as one that a moved dart left
/// behind: the edge still passes through the corner, and is redrawn over the span to each side of it (up to a
/// dart or the edge's end, and no further than half way to the next such corner). Its length changes, and the
/// account says by how much and in which seams. The corners at darts' mouths are for true_dart. The request
/// is appended to `made`. Throws Impossible (the redrawn edge would lie over another), UnknownName, BadWords
/// (span under 1 mm). O(n log n) for each corner.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
TrueEdgeResult true_edge(const Pattern& pattern, const TrueEdgeRequest& request);

}  // namespace dartwright
