#include "dartwright/pattern/run_table.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using sample::front;

// Sums of a run's lengths differ by their rounding, and so do the places.
constexpr double sum_rounding_mm = 1e-9;

RC_GTEST_PROP(RunTable, gives_the_places_of_place_on_run, ()) {
    Outline outline = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (EdgeItem* edge = outline.items[i].as_edge(); edge && *rc::gen::arbitrary<bool>())
            edge->fullness = testing::real_between(0, 0.5) * length_of_item(outline, i);
    }
    const auto runs = runs_of(outline);
    for (const Run& run : runs) {
        const RunTable table(outline, run);
        const double at = testing::real_between(-0.1, 1.1) * run.length;
        const RunPlace expected = place_on_run(outline, run, at);
        const RunPlace place = table.place(at);
        RC_ASSERT(place.item == expected.item);
        RC_ASSERT(std::abs(place.along_item - expected.along_item) <= sum_rounding_mm);
        RC_ASSERT(distance(place.point, expected.point) <= sum_rounding_mm);
        RC_ASSERT(norm(place.tangent - expected.tangent) <= 1e-6);
    }
}

RC_GTEST_PROP(RunTable, gives_points_evenly_where_it_gives_the_places, ()) {
    Outline outline = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (EdgeItem* edge = outline.items[i].as_edge(); edge && *rc::gen::arbitrary<bool>())
            edge->fullness = testing::real_between(0, 0.5) * length_of_item(outline, i);
    }
    for (const Run& run : runs_of(outline)) {
        const RunTable table(outline, run);
        RunTable::EvenPlaces places{testing::real_between(-0.1, 1) * run.length, 0, *testing::evenly(1, 60)};
        places.to_mm = testing::real_between(places.from_mm, 1.1 * run.length);
        std::vector<Point> points;
        table.add_points(points, places);
        RC_ASSERT(points.size() == std::size_t(places.steps) + 1);
        for (int k = 0; k <= places.steps; ++k) {
            const double share = double(k) / places.steps;
            const double at = places.from_mm + share * (places.to_mm - places.from_mm);
            RC_ASSERT(distance(points[std::size_t(k)], table.place(at).point) <= 2e-9 + 2e-12 * run.length);
        }
    }
}

TEST(RunTable, takes_the_item_that_begins_at_a_mouth_or_joint_save_at_the_end) {
    const Outline outline = front();
    const auto runs = runs_of(outline);
    const RunTable table(outline, runs[0]);
    EXPECT_EQ(table.place(-5).point, (Point{0, 0}));
    EXPECT_EQ(table.place(19).point, (Point{19, 0}));
    EXPECT_EQ(table.place(20).point, (Point{80, 0})) << "at a mouth: the item beyond it";
    EXPECT_EQ(table.place(25).item, 1u);
    EXPECT_EQ(table.place(31).point, (Point{151, 0}));
    EXPECT_EQ(table.place(60).point, (Point{180, 0})) << "at the end: the last item";
    EXPECT_EQ(table.place(1e9).point, (Point{180, 0}));
}

TEST(RunTable, passes_over_an_item_that_is_eased_away_altogether) {
    Outline outline = front();
    outline.items[1].as_edge()->fullness = 10;  // all of it
    const auto runs = runs_of(outline);
    EXPECT_EQ(RunTable(outline, runs[0]).place(20).point, (Point{150, 0}));
}

}  // namespace
}  // namespace dartwright
