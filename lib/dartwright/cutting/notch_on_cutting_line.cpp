#include "dartwright/cutting/notch_on_cutting_line.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/offset_curve.hpp"

namespace dartwright {
namespace {

// A line without allowance may run on either side of the true curve.
constexpr double nearest_mm = -2 * cutting_line_error_mm;

}  // namespace

CutNotch notch_on_cutting_line(const CuttingLine& line, const RunPlace& place) {
    CutNotch notch{place.point, place.point, cutting::outwards(place.tangent), 0, 0};
    double least = INFINITY;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        const Vector from = line.points[i] - place.point;
        const Vector to = line.points[(i + 1) % line.points.size()] - place.point;
        const double aside_from = cross(notch.outwards, from);
        const double aside_to = cross(notch.outwards, to);
        if ((aside_from < 0) == (aside_to < 0)) continue;
        const double share = aside_from / (aside_from - aside_to);
        const double out = dot(notch.outwards, from + share * (to - from));
        if (out < nearest_mm || out >= least) continue;
        least = out;
        notch.side = i;
    }
    notch.width_mm = least < INFINITY ? std::max(least, 0.0) : 0;
    notch.cut = place.point + notch.width_mm * notch.outwards;
    return notch;
}

}  // namespace dartwright
