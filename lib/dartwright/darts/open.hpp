#pragma once

#include <array>
#include <string>
#include <vector>

#include "dartwright/darts/impossible.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct OpenRequest {
    std::string piece;
};

/// An edge of the half, and the two of the whole.
struct OpenedRun {
    std::string edge;
    double before_mm = 0;  ///< sewn
    std::string left;
    double left_mm = 0;
    std::string right;
    double right_mm = 0;
};
/// A seam of the half, and the one or two that it is now.
struct OpenedSeam {
    std::string seam;
    std::vector<std::string> now;
};

struct OpenAccount {
    std::string piece;
    std::string fold;
    std::string drawn_side;  ///< `left` or `right`: the half that was drawn
    double area_before_mm2 = 0;
    double area_after_mm2 = 0;
    std::vector<OpenedRun> runs;
    std::vector<std::array<std::string, 2>> darts;  ///< left and right, double darts too
    std::vector<OpenedSeam> seams;
    std::vector<std::string> notes;
};
struct OpenResult {
    Pattern pattern;
    OpenAccount account;
};

/// Unfolds a piece that is cut on the fold. Left and right are as the piece lies before you with its grain
/// arrow pointing away from you (without a grain, with the fold pointing up as drawn): its edges, darts and
/// drills become `left X` and `right X`. The fold is no edge any more, but a marked line of its name. Lines
/// that end on the fold are one line across it, others are `left` and `right`. Every seam of the piece
/// becomes two, the second with the mirror image of what it was sewn to; not where the pattern already has a
/// seam for the mirror image. The request is appended to `made`. Throws Impossible (no fold, a fold that is
/// not straight or has a dart or a seam in it, a whole that would lie over itself), UnknownName.
/// O(n log n).
OpenResult open(const Pattern& pattern, const OpenRequest& request);

}  // namespace dartwright
