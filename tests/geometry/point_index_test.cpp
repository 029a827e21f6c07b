#include "dartwright/geometry/point_index.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <vector>

#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// On a coarse grid points are repeated and many are equally near; the odd step makes distances that are
/// equal but for their last bit.
Point any_point(double step) {
    return {step * *evenly(-6, 7), step * *evenly(-6, 7)};
}

RC_GTEST_PROP(PointIndex, FindsTheFirstOfTheNearest, ()) {
    const double step = *evenly(0, 2) == 0 ? 10 : 0.1 * *evenly(1, 100);
    std::vector<Point> points;
    const int count = *evenly(1, 80);
    for (int k = 0; k < count; ++k) points.push_back(any_point(step));
    const PointIndex index(points);
    bool is_tied = false;
    for (int asked = 0; asked < 20; ++asked) {
        const Point place = any_point(*evenly(0, 2) == 0 ? step : 0.5 * step);
        std::size_t nearest = 0;
        for (std::size_t i = 1; i < points.size(); ++i) {
            is_tied = is_tied || distance(points[i], place) == distance(points[nearest], place);
            if (distance(points[i], place) < distance(points[nearest], place)) nearest = i;
        }
        RC_ASSERT(index.nearest_to(place) == nearest);
    }
    RC_CLASSIFY(is_tied, "equally near");
}

}  // namespace
}  // namespace dartwright
