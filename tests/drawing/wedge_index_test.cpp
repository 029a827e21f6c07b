#include "dartwright/drawing/wedge_index.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/geometry/closest.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// On a coarse grid, so that places are repeated, darts have no length, and distances are equal.
Point any_point() {
    return {10.0 * *evenly(-6, 7), 10.0 * *evenly(-6, 7)};
}

double how_far_off(const Wedge& wedge, Point p) {
    return closest_point(Line{wedge.mouth, wedge.point}, p).distance;
}

// It says what asking every dart says.
RC_GTEST_PROP(WedgeIndex, SaysWhatEveryDartSays, ()) {
    std::vector<Wedge> wedges;
    const int count = *evenly(1, 60);
    for (int k = 0; k < count; ++k) wedges.push_back({any_point(), any_point(), 10});
    const WedgeIndex index(wedges);
    bool is_any = false;
    for (int asked = 0; asked < 20; ++asked) {
        const std::size_t mine = std::size_t(*evenly(0, count));
        const Point words = any_point() + 0.5 * (any_point() - Point{0, 0});
        const double clearly = *evenly(0, 30);
        bool is_nearest = true;
        for (std::size_t i = 0; i < wedges.size(); ++i) {
            const double reach = how_far_off(wedges[mine], words) + clearly;
            if (i != mine && reach - choice_mm > how_far_off(wedges[i], words)) is_nearest = false;
        }
        RC_ASSERT(index.is_nearest(mine, words, clearly) == is_nearest);
        is_any = is_any || is_nearest;
    }
    RC_CLASSIFY(is_any, "nearest somewhere");
}

}  // namespace
}  // namespace dartwright
