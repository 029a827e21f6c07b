#pragma once

#include <array>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// Which length both legs are given, measured to the pivot.
enum class TrueLegs {
    drawn,  ///< as far as the line that is drawn fair across the folded dart
    mean,   ///< of the two; the line is drawn through the legs' end
    long_,
    short_
};

/// How far to each side of the mouth the edge is redrawn unless told otherwise, mm. Our choice: about the
/// width of a hand's fingers, enough to spread a corner of ten degrees over a line that looks straight.
inline constexpr double true_span_mm = 40;

struct TrueDartRequest {
    std::string piece;
    std::string dart;
    TrueLegs legs = TrueLegs::drawn;
    double span_mm = true_span_mm;  ///< 0: the edge is only brought to the new leg ends
};

struct TrueDartAccount {
    std::string piece;
    std::string dart;
    std::array<double, 2> legs_before_mm{};  ///< to the pivot
    std::array<double, 2> legs_after_mm{};
    double mouth_before_deg = 0;  ///< corner of the edge over the mouth, the dart closed as sewn
    double mouth_after_deg = 0;
    double intake_before_mm = 0;
    double intake_after_mm = 0;
    std::array<double, 2> span_mm{};  ///< redrawn before and after the mouth
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct TrueDartResult {
    Pattern pattern;
    TrueDartAccount account;
};

/// Makes a dart true: both legs of one length, the point on the centre line at its old distance from the
/// pivot, and the edge smooth over the mouth when the dart is sewn. The dart is folded closed about its
/// point, the edge is drawn smooth over the span on each side, and unfolded; the span's
/// outer ends keep their place and direction. Curved legs are drawn straight. In a corner between two edges
/// only the legs are trued. The edge's length changes, and the account says by how much and in which seams. A
/// dart that is true to rounding is left as it is. The request is appended to `made`. Throws Impossible
/// (another dart stands at the mouth, the mouth is shut, the redrawn edge would leave the piece),
/// UnknownName, BadWords (span under 1 mm and not 0). O(n log n).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
TrueDartResult true_dart(const Pattern& pattern, const TrueDartRequest& request);

}  // namespace dartwright
