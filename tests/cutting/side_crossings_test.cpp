// The crossings of a line's sides as one meets them who walks it. Beside them: `self_crossings`, which tests
// of its own hold against exact arithmetic.

#include "dartwright/cutting/side_crossings.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

namespace dartwright::cutting {
namespace {

std::vector<Passage> passages_on(const SideCrossings& crossings, std::size_t side) {
    std::vector<Passage> out;
    for (auto next = crossings.first_on(side); next; next = crossings.after(*next)) out.push_back(*next);
    return out;
}

// Of a line there and back across itself.
TEST(SideCrossings, of_one_that_is_crossed_twice_come_in_the_order_of_the_side) {
    const std::vector<Point> points{{0, 0},    {100, 0},  {100, 50}, {70, 50},
                                    {70, -20}, {30, -20}, {30, 50},  {0, 50}};
    const SideCrossings crossings(points);
    ASSERT_EQ(crossings.size(), 2U);
    const std::vector<Passage> first = passages_on(crossings, 0);
    ASSERT_EQ(first.size(), 2U);
    EXPECT_EQ(first[0].place, (Point{30, 0}));
    EXPECT_EQ(first[1].place, (Point{70, 0}));
    EXPECT_EQ(crossings.changed_over(first[0]).side, 5U);
    EXPECT_EQ(crossings.changed_over(first[1]).side, 3U);
    EXPECT_DOUBLE_EQ(crossings.changed_over(first[0]).along, 400);
    EXPECT_TRUE(passages_on(crossings, 1).empty());
}

// Whole coordinates let many crossings lie in one place, and corners on sides.
RC_GTEST_PROP(SideCrossings, are_all_there_once_on_each_side_in_order, ()) {
    const auto coordinates = *rc::gen::container<std::vector<int>>(
        2 * *rc::gen::inRange<std::size_t>(4, 24), rc::gen::inRange(0, *rc::gen::element(6, 1000)));
    std::vector<Point> points;
    for (std::size_t i = 0; i + 1 < coordinates.size(); i += 2)
        points.push_back({static_cast<double>(coordinates[i]), static_cast<double>(coordinates[i + 1])});
    const auto found = self_crossings(points, {}, 100'000);
    const SideCrossings crossings(points);
    RC_ASSERT(crossings.size() == found.size());
    std::multiset<std::pair<std::size_t, std::size_t>> pairs;
    for (std::size_t side = 0; side < points.size(); ++side) {
        const std::vector<Passage> passages = passages_on(crossings, side);
        RC_ASSERT(std::is_sorted(passages.begin(), passages.end(),
                                 [](const Passage& a, const Passage& b) { return a.along < b.along; }));
        for (const Passage& passage : passages) {
            const Passage other = crossings.changed_over(passage);
            RC_ASSERT(other.place == passage.place);
            RC_ASSERT(crossings.changed_over(other).side == side);
            pairs.insert({side, other.side});
        }
    }
    RC_ASSERT(pairs.size() == 2 * found.size());
    for (const SelfCrossing& each : found) {
        RC_ASSERT(pairs.count({each.first, each.second}) > 0);
        RC_ASSERT(pairs.count({each.second, each.first}) > 0);
    }
}

}  // namespace
}  // namespace dartwright::cutting
