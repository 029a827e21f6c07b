#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>

#include "dartwright/geometry/predicates.hpp"
#include "geometry/exact_oracle.hpp"
#include "geometry/polygons.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

bool is_simple_by_cgal(const std::vector<Point>& polygon) {
    using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
    CGAL::Polygon_2<Kernel> out;
    for (const Point p : polygon) out.push_back({p.x, p.y});
    return out.is_simple();
}

RC_GTEST_PROP(SelfCrossings, simple_as_by_definition_and_by_cgal_on_a_grid, ()) {
    const auto polygon = *generated::polygon(generated::grid_point());
    RC_ASSERT(is_simple(polygon) == oracle::is_simple(polygon));
    RC_ASSERT(is_simple(polygon) == is_simple_by_cgal(polygon));
    RC_ASSERT(is_simple(polygon) == self_crossings(polygon).empty());
}

RC_GTEST_PROP(SelfCrossings, simple_as_by_definition_and_by_cgal_near_a_grid, ()) {
    const auto polygon = *generated::polygon(generated::near_grid_point(), 8);
    RC_ASSERT(is_simple(polygon) == oracle::is_simple(polygon));
    RC_ASSERT(is_simple(polygon) == is_simple_by_cgal(polygon));
}

// Rings about a centre are simple; two corners exchanged make some that are not.
RC_GTEST_PROP(SelfCrossings, simple_as_by_cgal_on_rings, ()) {
    const auto n = *testing::evenly<std::size_t>(4, 80);
    const auto radii = *rc::gen::container<std::vector<double>>(n, generated::real(20, 100));
    std::vector<Point> ring;
    for (std::size_t i = 0; i < n; ++i) {
        const double angle = 2 * pi * static_cast<double>(i) / static_cast<double>(n);
        ring.push_back({radii[i] * std::cos(angle), radii[i] * std::sin(angle)});
    }
    RC_ASSERT(is_simple(ring));
    std::swap(ring[*testing::evenly<std::size_t>(0, n)], ring[*testing::evenly<std::size_t>(0, n)]);
    RC_ASSERT(is_simple(ring) == is_simple_by_cgal(ring));
}

RC_GTEST_PROP(SelfCrossings, proper_crossings_are_all_given_in_order, ()) {
    const auto p = *generated::polygon(generated::point(100), 15);
    std::vector<std::pair<std::size_t, std::size_t>> wanted;
    for (std::size_t i = 0; i < p.size(); ++i) {
        for (std::size_t j = i + 1; j < p.size(); ++j) {
            const Segment s{p[i], p[i + 1]};
            const Segment t{p[j], p[(j + 1) % p.size()]};
            if (meeting_of(s, t) == Meeting::crossing) wanted.emplace_back(i, j);
        }
    }
    const auto found = self_crossings(p, {}, 1000);
    RC_ASSERT(found.size() == wanted.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        RC_ASSERT(found[i].first == wanted[i].first && found[i].second == wanted[i].second);
    }
    RC_ASSERT(self_crossings(p, {}, 2).size() == std::min<std::size_t>(2, wanted.size()));
}

TEST(SelfCrossings, repeated_neighbours_count_as_one) {
    EXPECT_TRUE(is_simple(std::vector<Point>{{0, 0}, {0, 0}, {4, 0}, {4, 4}, {4, 4}, {0, 4}, {0, 0}}));
}

TEST(SelfCrossings, fewer_than_three_places) {
    EXPECT_TRUE(is_simple({}));
    EXPECT_TRUE(is_simple(std::vector<Point>{{1, 1}, {1, 1}}));
    EXPECT_FALSE(is_simple(std::vector<Point>{{1, 1}, {2, 2}}));
}

TEST(SelfCrossings, spike) {
    const std::vector<Point> p{{0, 0}, {4, 0}, {4, 4}, {4, 6}, {4, 4}, {0, 4}};
    const auto found = self_crossings(p);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found[0].first, 2u);
    EXPECT_EQ(found[0].second, 3u);
    EXPECT_FALSE(is_simple(p));
}

TEST(SelfCrossings, places_and_indices_are_those_of_the_polygon_given) {
    const std::vector<Point> bow{{0, 0}, {0, 0}, {4, 4}, {4, 0}, {0, 4}};
    const auto found = self_crossings(bow);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].first, 1u);
    EXPECT_EQ(found[0].second, 3u);
    EXPECT_EQ(found[0].place, (Point{2, 2}));
}

// Two darts, from the left and from the right edge, that share their pivot in the middle.
const std::vector<Point> two_darts{{0, 0}, {8, 0}, {8, 3}, {4, 4}, {8, 5},
                                   {8, 8}, {0, 8}, {0, 5}, {4, 4}, {0, 3}};
const std::vector<std::size_t> pivots{3, 8};

TEST(SelfCrossings, darts_may_share_their_pivot) {
    EXPECT_TRUE(is_simple(two_darts, pivots));
    const auto found = self_crossings(two_darts);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].place, (Point{4, 4}));
}

TEST(SelfCrossings, sides_may_not_pass_through_a_shared_pivot) {
    const std::vector<Point> p{{0, 0}, {4, 4}, {8, 8}, {0, 8}, {4, 4}, {8, 0}};
    EXPECT_FALSE(is_simple(p, std::vector<std::size_t>{1, 4}));
}

TEST(SelfCrossings, a_pivot_may_not_lie_inside_a_side) {
    const std::vector<Point> p{{0, 0}, {8, 0}, {8, 8}, {0, 8}, {8, 4}, {0, 5}};
    EXPECT_FALSE(is_simple(p, std::vector<std::size_t>{4}));
}

TEST(SelfCrossings, legs_of_darts_with_one_pivot_may_not_overlap) {
    const std::vector<Point> p{{0, 0}, {8, 0}, {8, 3}, {4, 4}, {8, 5}, {6, 4.5}, {4, 4}, {0, 8}};
    EXPECT_FALSE(is_simple(p, std::vector<std::size_t>{3, 6}));
}

}  // namespace
}  // namespace dartwright
