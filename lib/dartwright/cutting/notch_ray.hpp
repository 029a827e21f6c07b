#pragma once

// Private to the room: the ray straight out from a place of the stitching line, which meets sides of the
// cutting line.

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/notch_on_cutting_line.hpp"
#include "dartwright/cutting/offset_curve.hpp"

namespace dartwright::cutting {

class NotchRay {
  public:
    /// The line must outlive it.
    NotchRay(const CuttingLine& line, const RunPlace& place)
        : line_(line), notch_{place.point, place.point, outwards(place.tangent), 0, 0} {}

    /// Of sides that are met equally near the first counts, in whichever order they are asked.
    void meet(std::size_t side) {
        const Vector from = line_.points[side] - notch_.stitched;
        const Vector to = line_.points[(side + 1) % line_.points.size()] - notch_.stitched;
        const double aside_from = cross(notch_.outwards, from);
        const double aside_to = cross(notch_.outwards, to);
        if ((aside_from < 0) == (aside_to < 0)) return;
        const double share = aside_from / (aside_from - aside_to);
        const double out = dot(notch_.outwards, from + share * (to - from));
        if (out < nearest_mm || out > least_mm_ || (out == least_mm_ && side > notch_.side)) return;
        least_mm_ = out;
        notch_.side = side;
    }

    /// How far out the nearest of them is; infinite if none is met.
    double least_mm() const { return least_mm_; }

    CutNotch notch() const {
        CutNotch notch = notch_;
        notch.width_mm = least_mm_ < INFINITY ? std::max(least_mm_, 0.0) : 0;
        notch.cut = notch.stitched + notch.width_mm * notch.outwards;
        return notch;
    }

  private:
    /// A line without allowance may run on either side of the true curve.
    static constexpr double nearest_mm = -2 * cutting_line_error_mm;

    const CuttingLine& line_;
    CutNotch notch_;
    double least_mm_ = INFINITY;
};

}  // namespace dartwright::cutting
