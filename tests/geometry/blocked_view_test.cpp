#include <stdexcept>

#include "dartwright/geometry/predicates.hpp"
#include "geometry/exact_oracle.hpp"
#include "geometry/polygons.hpp"

namespace dartwright {
namespace {

rc::Gen<std::vector<Point>> simple_polygon() {
    const auto found = rc::gen::suchThat(generated::polygon(generated::grid_point(), 9),
                                         [](const std::vector<Point>& p) { return is_simple(p); });
    return rc::gen::map(rc::gen::resize(100, found), [](std::vector<Point> p) {
        if (signed_area(p) < 0) std::reverse(p.begin(), p.end());
        return p;
    });
}

RC_GTEST_PROP(BlockedView, is_free_as_by_definition, ()) {
    const auto p = *simple_polygon();
    for (std::size_t from = 0; from < p.size(); ++from) {
        for (std::size_t to = 0; to < p.size(); ++to) {
            if (from == to) continue;
            RC_ASSERT(blocked_view(p, from, to).has_value() != oracle::is_free(p, from, to));
        }
    }
}

// Two darts, from the left and from the right edge, that share their pivot in the middle.
const std::vector<Point> two_darts{{0, 0}, {8, 0}, {8, 3}, {4, 4}, {8, 5},
                                   {8, 8}, {0, 8}, {0, 5}, {4, 4}, {0, 3}};

TEST(BlockedView, from_a_shared_pivot) {
    for (const std::size_t pivot : {3u, 8u}) {
        for (const std::size_t free : {0u, 1u, 5u, 6u})
            EXPECT_FALSE(blocked_view(two_darts, pivot, free)) << free;
        // Along the legs.
        for (const std::size_t leg : {2u, 4u, 7u, 9u})
            EXPECT_TRUE(blocked_view(two_darts, pivot, leg)) << leg;
    }
}

TEST(BlockedView, across_a_mouth) {
    EXPECT_TRUE(blocked_view(two_darts, 2, 4));
    EXPECT_TRUE(blocked_view(two_darts, 1, 5));
    EXPECT_TRUE(blocked_view(two_darts, 0, 5));  // through the pivot
}

TEST(BlockedView, names_the_nearest_side_and_the_place) {
    const std::vector<Point> p{{0, 0}, {10, 0}, {10, 10}, {6, 10}, {6, 2}, {4, 2}, {4, 10}, {0, 10}};
    const auto blocked = blocked_view(p, 7, 2);
    ASSERT_TRUE(blocked);
    EXPECT_EQ(blocked->place, (Point{0, 10}));  // along the outline from there on
    const auto slanting = blocked_view(p, 0, 2);
    ASSERT_TRUE(slanting);
    EXPECT_EQ(slanting->side, 5u);
    EXPECT_EQ(slanting->place, (Point{4, 4}));
}

TEST(BlockedView, refuses_what_is_no_view) {
    EXPECT_THROW(blocked_view(two_darts, 0, 10), std::invalid_argument);
    EXPECT_THROW(blocked_view(two_darts, 3, 8), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
