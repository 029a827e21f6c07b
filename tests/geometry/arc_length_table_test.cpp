#include "dartwright/geometry/arc_length_table.hpp"

#include "dartwright/geometry/arc_length.hpp"
#include "geometry/generators.hpp"
#include "geometry/length_oracle.hpp"

namespace dartwright {
namespace {

TEST(ArcLengthTable, line) {
    const ArcLengthTable table(Line{{0, 0}, {30, 40}});
    EXPECT_NEAR(table.length(), 50, 50 * arc_length_relative_error);
    EXPECT_NEAR(table.parameter_at(12.5), 0.25, 1e-8);
    EXPECT_EQ(table.parameter_at(-1), 0);
    EXPECT_EQ(table.parameter_at(51), 1);
}

TEST(ArcLengthTable, one_point) {
    const ArcLengthTable table(Cubic{{Point{1, 1}, {1, 1}, {1, 1}, {1, 1}}});
    EXPECT_EQ(table.length(), 0);
    EXPECT_EQ(table.parameter_at(1), 0);
}

void expect_places(const Cubic& c, double tolerance) {
    const ArcLengthTable table(c);
    const auto whole = static_cast<double>(length_by_oracle(c));
    RC_ASSERT(std::abs(table.length() - whole) <= arc_length_relative_error * whole);
    for (int i = 0; i < 5; ++i) {
        const double wanted = whole * *generated::real(0, 1);
        const auto found = static_cast<double>(length_by_oracle(c, 0, table.parameter_at(wanted)));
        RC_ASSERT(std::abs(found - wanted) <= tolerance);
    }
}

RC_GTEST_PROP(ArcLengthTable, places_are_true, ()) {
    expect_places(*generated::cubic(300), table_place_error_mm);
}

RC_GTEST_PROP(ArcLengthTable, places_are_true_near_cusps, ()) {
    expect_places(*generated::near_cusp(300), table_place_error_mm);
}

RC_GTEST_PROP(ArcLengthTable, places_are_true_on_small_curves, ()) {
    const double size = *generated::log_uniform(1e-6, 1);
    expect_places(*generated::near_cusp(size), table_place_error_mm);
}

RC_GTEST_PROP(ArcLengthTable, places_are_true_on_long_curves, ()) {
    const Cubic c = *generated::cubic(1e8);
    expect_places(c, std::max(table_place_error_mm, table_place_relative_error * length(c)));
}

}  // namespace
}  // namespace dartwright
