#pragma once

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Where a notch of the stitching line comes to the cutting line.
struct CutNotch {
    Point stitched;        ///< on the stitching line
    Point cut;             ///< straight out from it
    Vector outwards;       ///< unit, square to the stitching line
    double width_mm = 0;   ///< from the one to the other
    std::size_t side = 0;  ///< of the cutting line
};

/// Straight out from a place of the stitching line to the first side of the cutting line. On a line without
/// allowance there it is the place itself. O(sides).
CutNotch notch_on_cutting_line(const CuttingLine& line, const RunPlace& place);

}  // namespace dartwright
