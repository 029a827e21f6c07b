#include "dartwright/cutting/notches_on_cutting_line.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "dartwright/cutting/offset_curve.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// What is met going out from a place, by every side of the line in turn.
CutNotch met_by_every_side(const CuttingLine& line, const RunPlace& place) {
    CutNotch notch{place.point, place.point, cutting::outwards(place.tangent), 0, 0};
    double least = INFINITY;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
        const Vector from = line.points[i] - place.point;
        const Vector to = line.points[(i + 1) % line.points.size()] - place.point;
        const double aside_from = cross(notch.outwards, from);
        const double aside_to = cross(notch.outwards, to);
        if ((aside_from < 0) == (aside_to < 0)) continue;
        const double out = dot(notch.outwards, from + aside_from / (aside_from - aside_to) * (to - from));
        if (out < -2 * cutting_line_error_mm || out >= least) continue;
        least = out;
        notch.side = i;
    }
    notch.width_mm = least < INFINITY ? std::max(least, 0.0) : 0;
    notch.cut = place.point + notch.width_mm * notch.outwards;
    return notch;
}

bool is_same(const CutNotch& a, const CutNotch& b) {
    return a.stitched == b.stitched && a.cut == b.cut && a.outwards.x == b.outwards.x &&
           a.outwards.y == b.outwards.y && a.width_mm == b.width_mm && a.side == b.side;
}

/// Any points in any order, on a grid from a hair to a room's width: sides of no length, sides met in their
/// ends, several met equally near, none met at all.
RC_GTEST_PROP(NotchesOnCuttingLine, AreMetAsByEverySideInTurn, ()) {
    const double step = std::pow(10.0, *evenly(-3, 4));
    const auto any_point = [step](int within) {
        return Point{step * *evenly(-within, within + 1), step * *evenly(-within, within + 1)};
    };
    CuttingLine line;
    const int count = *evenly(0, 40);
    for (int k = 0; k < count; ++k) line.points.push_back(any_point(5));
    NotchesOnCuttingLine notches(line);
    int met = 0;
    for (int asked = 0; asked < 70; ++asked) {
        RunPlace place;
        place.point = any_point(8);
        const double turn = *evenly(0, 2) == 0 ? 0.5 * pi * *evenly(0, 4) : 0.1 * *evenly(0, 63);
        place.tangent = {std::cos(turn), std::sin(turn)};
        const CutNotch expected = met_by_every_side(line, place);
        RC_ASSERT(is_same(notches.at(place), expected));
        RC_ASSERT(is_same(notch_on_cutting_line(line, place), expected));
        if (expected.width_mm > 0) ++met;
    }
    RC_CLASSIFY(met > 0, "met");
}

}  // namespace
}  // namespace dartwright
