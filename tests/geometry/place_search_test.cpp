#include "dartwright/geometry/place_search.hpp"

#include <algorithm>

#include "dartwright/geometry/arc_length.hpp"
#include "geometry/generators.hpp"

namespace dartwright {
namespace {

RC_GTEST_PROP(PlaceSearch, GivesTheSameBitsForManyPlacesAsForOne, ()) {
    const Cubic cubic = *rc::gen::oneOf(generated::cubic(100), generated::near_cusp(100));
    const PlaceSearch search(cubic);
    const double whole = length(cubic);
    for (const double share : *rc::gen::container<std::vector<double>>(generated::real(-0.1, 1.1)))
        RC_ASSERT(search.parameter_at(share * whole) == parameter_at(cubic, share * whole));
}

RC_GTEST_PROP(PlaceSearch, FindsThePlace, ()) {
    const Cubic cubic = *generated::cubic(100);
    const double whole = length(cubic);
    const double wanted = *generated::real(0, 1) * whole;
    const double t = PlaceSearch(cubic).parameter_at(wanted);
    RC_ASSERT(std::abs(length_between(cubic, 0, t) - wanted) <= 1e-8 + 1e-8 * whole);
}

// In any order, beside a cusp too; what is summed up from place to place does not go astray.
RC_GTEST_PROP(PlaceSearch, FindsPlacesOneAfterTheOther, ()) {
    const Cubic cubic = *rc::gen::oneOf(generated::cubic(100), generated::near_cusp(100));
    const PlaceSearch search(cubic);
    const double whole = length(cubic);
    const auto expect_place = [&](double t, double wanted) {
        const double there = std::clamp(wanted, 0.0, whole);
        RC_ASSERT(std::abs(length_between(cubic, 0, t) - there) <= 2e-9 + 2e-12 * whole);
    };
    PlaceSearch::Reached last;
    for (int k = 0; k <= 100; ++k)
        expect_place(search.parameter_after(last, k / 100.0 * whole), k / 100.0 * whole);
    for (const double share : *rc::gen::container<std::vector<double>>(generated::real(-0.1, 1.1)))
        expect_place(search.parameter_after(last, share * whole), share * whole);
}

}  // namespace
}  // namespace dartwright
