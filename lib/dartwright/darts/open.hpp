#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// After whom the halves of an opened piece are called left and right.
enum class SidesBy {
    wearer,  ///< where it is known how the piece is worn, else as drawn, which a note says
    drawing  ///< as the piece lies before you
};

struct OpenRequest {
    std::string piece;
    std::optional<Worn> worn = {};       ///< of a piece that does not say it itself
    std::optional<SideUp> side_up = {};  ///< beside `worn`; the right side if absent
    SidesBy by = SidesBy::wearer;
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
    std::string drawn_side;   ///< `left` or `right`: the half that was drawn
    bool is_as_worn = false;  ///< left and right are the wearer's, else as drawn
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

/// Unfolds a piece that is cut on the fold: its edges, darts and drills become `left X` and `right X`. Left
/// and right are the wearer's where the piece or the request says how it is worn: a front that lies right
/// side up has its wearer's left on your right, as one who stands before you has; a back, or a front with its
/// wrong side up, on your left. Else they are as the piece lies before you with its grain arrow pointing away
/// from you (without a grain, with the fold pointing up as drawn), and a note says so. The opened piece says
/// how it is worn. The fold is no edge any more, but a marked line of its name. Lines that end on the fold
/// are one line across it, others are `left` and `right`. Every seam of the piece becomes two, the second
/// with the mirror image of what it was sewn to; not where the pattern already has a seam for the mirror
/// image. The request is appended to `made`, with how the halves were named. Throws BadWords (the request
/// says otherwise than the piece how it is worn; a side up without that), Impossible (no fold, a fold that is
/// not straight or has a dart or a seam in it, a whole that would lie over itself), UnknownName.
/// O(n log n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
OpenResult open(const Pattern& pattern, const OpenRequest& request);

}  // namespace dartwright
