#include "dartwright/geometry/curve_tree.hpp"

#include <limits>

#include "dartwright/geometry/closest.hpp"
#include "geometry/generators.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

// Lines and cubics, each from where the last one ended or from anywhere: the answers are the same in any
// order.
std::vector<Curve> any_curves() {
    std::vector<Curve> out;
    const bool is_connected = *rc::gen::arbitrary<bool>();
    const int count = *testing::evenly(1, 40);
    for (int i = 0; i < count; ++i) {
        Cubic cubic = *rc::gen::oneOf(generated::cubic(300), generated::near_cusp(300));
        if (is_connected && !out.empty()) cubic.p[0] = end_of(out.back());
        if (*rc::gen::arbitrary<bool>()) {
            out.push_back(cubic);
        } else {
            out.push_back(Line{cubic.p[0], cubic.p[3]});
        }
    }
    return out;
}

RC_GTEST_PROP(CurveTree, is_as_far_as_the_nearest_of_all_curves, ()) {
    const std::vector<Curve> curves = any_curves();
    const CurveTree tree(curves);
    const Point p = *generated::point(*generated::log_uniform(1, 1e4));
    double least = std::numeric_limits<double>::infinity();
    for (const Curve& curve : curves) least = std::min(least, closest_point(curve, p).distance);
    RC_ASSERT(tree.distance_from(p) <= least * (1 + 1e-15));
    RC_ASSERT(tree.distance_from(p) >= least);
}

double most_between_controls(const Curve& a, const Curve& b) {
    double most = 0;
    for (std::size_t i = 0; i < 4; ++i) most = std::max(most, distance(controls_of(a)[i], controls_of(b)[i]));
    return most;
}

RC_GTEST_PROP(CurveTree, finds_the_curve_with_the_nearest_controls, ()) {
    const std::vector<Curve> curves = any_curves();
    const CurveTree tree(curves);
    const Curve wanted = *generated::cubic(300);
    double least = std::numeric_limits<double>::infinity();
    for (const Curve& curve : curves) least = std::min(least, most_between_controls(curve, wanted));
    RC_ASSERT(std::abs(tree.controls_apart(wanted, 0) - least) <= 1e-12 * least);
    const double enough = least * *generated::real(0.5, 2);
    const double found = tree.controls_apart(wanted, enough);
    RC_ASSERT(found >= least * (1 - 1e-12));
    RC_ASSERT(found <= std::max(least, enough) * (1 + 1e-12));
}

RC_GTEST_PROP(CurveTree, no_place_is_farther_than_the_controls_allow, ()) {
    const CurveTree tree(any_curves());
    const Curve wanted = *generated::cubic(300);
    const double bound = tree.controls_apart(wanted, *generated::real(0, 300));
    for (int i = 0; i <= 100; ++i) RC_ASSERT(tree.distance_from(point_at(wanted, i / 100.0)) <= bound + 1e-9);
}

TEST(CurveTree, of_nothing_is_infinitely_far) {
    const CurveTree tree({});
    EXPECT_EQ(tree.distance_from({0, 0}), std::numeric_limits<double>::infinity());
    EXPECT_EQ(tree.controls_apart(Line{{0, 0}, {1, 0}}, 0), std::numeric_limits<double>::infinity());
}

}  // namespace
}  // namespace dartwright
