#include "dartwright/pattern/run.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/geometry/closest.hpp"
#include "geometry/length_oracle.hpp"
#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using sample::dart;
using sample::front;
using sample::straight;
using Items = std::vector<std::size_t>;

TEST(runs_of, joins_a_run_that_wraps_round_the_start) {
    const auto runs = runs_of(front());
    std::vector<std::string> names;
    for (const auto& run : runs) names.push_back(run.edge);
    EXPECT_EQ(names, (std::vector<std::string>{"waist", "side", "armhole", "top", "centre front"}));
    EXPECT_EQ(runs[0].items, (Items{9, 1, 3}));
    EXPECT_EQ(runs[0].darts, (Items{0, 2}));
    EXPECT_DOUBLE_EQ(runs[0].length, 20 + 10 + 30);
    EXPECT_EQ(runs[0].before, "centre front");
    EXPECT_EQ(runs[0].after, "side");
}

TEST(runs_of, gives_a_dart_between_two_names_to_their_corner) {
    const auto runs = runs_of(front());
    EXPECT_EQ(runs[1].corner_darts_after, (Items{5}));
    EXPECT_EQ(runs[2].corner_darts_before, (Items{5}));
    EXPECT_TRUE(runs[1].darts.empty());
    EXPECT_TRUE(runs[2].darts.empty());
    EXPECT_TRUE(runs[0].corner_darts_before.empty());
    EXPECT_EQ(runs[1].after, "armhole") << "darts are skipped in naming the neighbour";
}

TEST(runs_of, takes_fullness_off) {
    Outline outline = front();
    outline.items[3].as_edge()->fullness = 12;
    EXPECT_DOUBLE_EQ(runs_of(outline)[0].length, 48);
}

TEST(runs_of, an_outline_without_edges_has_no_runs) {
    EXPECT_TRUE(runs_of(Outline{}).empty());
    Outline darts_only;
    darts_only.items = {dart("a", {1, 1}, {2, 0}), dart("b", {1, -1}, {0, 0})};
    EXPECT_TRUE(runs_of(darts_only).empty());
}

TEST(runs_of, one_name_all_round_is_its_own_neighbour) {
    const auto runs = runs_of(sample::square({"rim", "rim", "rim", "rim"}));
    ASSERT_EQ(runs.size(), 1u);
    EXPECT_EQ(runs[0].items, (Items{0, 1, 2, 3}));
    EXPECT_DOUBLE_EQ(runs[0].length, 400);
    EXPECT_EQ(runs[0].before, "rim");
    EXPECT_EQ(runs[0].after, "rim");
    EXPECT_EQ(name_of_end(runs[0], RunEnd::start), "start");
    EXPECT_NEAR(corner_angle(sample::square({"rim", "rim", "rim", "rim"}), runs[0], RunEnd::start), pi / 2,
                1e-15);
}

TEST(runs_of, a_single_item_may_be_the_whole_piece) {
    // A disc-like drop: one cubic from (0, 0) round to (0, 0), and a dart at its only corner.
    Outline drop;
    drop.start = {0, 0};
    drop.items = {sample::curved("rim", {0, 0}, {{{300, -100}, {300, 100}}})};
    EXPECT_EQ(runs_of(drop)[0].items, (Items{0}));
    drop.items[0].to = {0, 30};
    drop.items.push_back(dart("dart", {40, 15}, {0, 0}));
    const auto runs = runs_of(drop);
    ASSERT_EQ(runs.size(), 1u);
    EXPECT_EQ(runs[0].corner_darts_after, (Items{1}));
    EXPECT_EQ(runs[0].corner_darts_before, (Items{1}));
    EXPECT_TRUE(runs[0].darts.empty());
    // The cloth's angles beside the two mouth ends: edge against leg, once at each.
    const double at_a = angle_from(Vector{40, -15}, Vector{300, 70});
    const double at_b = angle_from(Vector{300, -100}, Vector{40, 15});
    EXPECT_NEAR(corner_angle(drop, runs[0], RunEnd::start), at_a + at_b, 1e-12);
    EXPECT_NEAR(corner_angle(drop, runs[0], RunEnd::end), corner_angle(drop, runs[0], RunEnd::start), 1e-15);
}

TEST(runs_of, darts_side_by_side_without_an_edge_between_stand_at_one_distance) {
    Outline outline = sample::square({"hem", "side", "top", "centre"});
    outline.items[0].to = {30, 0};
    outline.items.insert(
        outline.items.begin() + 1,
        {dart("left", {40, 20}, {50, 0}), dart("right", {60, 20}, {70, 0}), straight("hem", {100, 0})});
    const auto runs = runs_of(outline);
    EXPECT_EQ(runs[0].darts, (Items{1, 2}));
    EXPECT_EQ(dart_distances(outline, runs[0]), (std::vector<double>{30, 30}));
    EXPECT_DOUBLE_EQ(runs[0].length, 60);
    const RunPlace place = place_on_run(outline, runs[0], 30);
    EXPECT_EQ(place.point, (Point{70, 0})) << "beyond both mouths: the item that begins there";
}

TEST(runs_of, darts_side_by_side_in_one_corner_are_all_closed_in_its_angle) {
    Outline outline = sample::square({"hem", "side", "top", "centre"});
    outline.items[0].to = {70, 0};
    outline.items.insert(outline.items.begin() + 1,
                         {dart("low", {70, 30}, {100, 0}), dart("high", {70, 30}, {100, 30})});
    const auto runs = runs_of(outline);
    EXPECT_EQ(runs[0].corner_darts_after, (Items{1, 2}));
    EXPECT_EQ(runs[1].corner_darts_before, (Items{1, 2}));
    // The square corner is taken out by 45 and 45 degrees: the side then runs on from the hem.
    EXPECT_NEAR(degrees(corner_angle(outline, runs[0], RunEnd::end)), 180, 1e-9);
}

TEST(runs_of, an_outline_may_begin_and_end_with_darts) {
    Outline outline;
    outline.start = {0, 0};
    outline.items = {dart("at start", {50, 30}, {100, 0}), straight("side", {100, 100}),
                     straight("top", {0, 100}), straight("centre", {0, 50}),
                     dart("at end", {20, 25}, {0, 0})};
    const auto runs = runs_of(outline);
    ASSERT_EQ(runs.size(), 3u);
    EXPECT_EQ(runs[0].edge, "side");
    EXPECT_EQ(runs[0].corner_darts_before, (Items{4, 0})) << "in outline order, over the start";
    EXPECT_EQ(runs[2].corner_darts_after, (Items{4, 0}));
}

TEST(end_named, takes_the_neighbours_name_or_the_two_words) {
    const auto runs = runs_of(front());
    EXPECT_EQ(end_named(runs[0], "centre front"), RunEnd::start);
    EXPECT_EQ(end_named(runs[0], "side"), RunEnd::end);
    EXPECT_EQ(end_named(runs[0], "start"), RunEnd::start);
    EXPECT_EQ(end_named(runs[0], "end"), RunEnd::end);
    EXPECT_EQ(end_named(runs[0], "armhole"), std::nullopt);
    EXPECT_EQ(end_named(runs[0], ""), std::nullopt);
    EXPECT_EQ(name_of_end(runs[0], RunEnd::start), "centre front");
    EXPECT_EQ(name_of_end(runs[0], RunEnd::end), "side");
}

TEST(end_named, knows_only_the_two_words_where_both_neighbours_have_one_name) {
    const auto runs = runs_of(sample::square({"side", "side", "centre", "centre"}));
    ASSERT_EQ(runs.size(), 2u);
    EXPECT_EQ(end_named(runs[0], "centre"), std::nullopt);
    EXPECT_EQ(end_named(runs[0], "start"), RunEnd::start);
    EXPECT_EQ(name_of_end(runs[0], RunEnd::end), "end");
}

TEST(find_run, is_null_for_an_unknown_name) {
    const auto runs = runs_of(front());
    EXPECT_EQ(find_run(runs, "top")->edge, "top");
    EXPECT_EQ(find_run(runs, "hem"), nullptr);
}

TEST(place_on_run, walks_through_closed_darts) {
    const Outline outline = front();
    const auto runs = runs_of(outline);
    EXPECT_EQ(place_on_run(outline, runs[0], 0).point, (Point{0, 0}));
    EXPECT_EQ(place_on_run(outline, runs[0], 19).point, (Point{19, 0}));
    EXPECT_EQ(place_on_run(outline, runs[0], 20).point, (Point{80, 0})) << "at a mouth: the item beyond it";
    EXPECT_EQ(place_on_run(outline, runs[0], 25).item, 1u);
    EXPECT_EQ(place_on_run(outline, runs[0], 31).point, (Point{151, 0}));
    EXPECT_EQ(place_on_run(outline, runs[0], 60).point, (Point{180, 0})) << "at the end: the last item";
    EXPECT_EQ(dart_distances(outline, runs[0]), (std::vector<double>{20, 30}));
    EXPECT_EQ(item_distances(outline, runs[0]), (std::vector<double>{0, 20, 30}));
}

TEST(place_on_run, is_clamped_to_the_run) {
    const Outline outline = front();
    const auto runs = runs_of(outline);
    EXPECT_EQ(place_on_run(outline, runs[0], -5).point, (Point{0, 0}));
    EXPECT_EQ(place_on_run(outline, runs[0], 1e9).point, (Point{180, 0}));
}

TEST(place_on_run, spreads_fullness_evenly_over_its_item) {
    Outline outline = front();
    outline.items[3].as_edge()->fullness = 15;  // of 30
    const auto runs = runs_of(outline);
    const RunPlace place = place_on_run(outline, runs[0], 30 + 5);
    EXPECT_NEAR(place.along_item, 10, 1e-12);
    EXPECT_NEAR(place.point.x, 160, 1e-12);
}

TEST(place_on_run, passes_over_an_item_that_is_eased_away_altogether) {
    Outline outline = front();
    outline.items[1].as_edge()->fullness = 10;  // all of it
    const auto runs = runs_of(outline);
    EXPECT_EQ(place_on_run(outline, runs[0], 20).point, (Point{150, 0}));
    EXPECT_EQ(dart_distances(outline, runs[0]), (std::vector<double>{20, 20}));
}

TEST(corner_angle, is_the_interior_one_with_the_corners_darts_closed_about_their_points) {
    const Outline outline = front();
    const auto runs = runs_of(outline);
    EXPECT_NEAR(degrees(corner_angle(outline, runs[0], RunEnd::start)), 90, 1e-12);
    EXPECT_NEAR(degrees(corner_angle(outline, runs[0], RunEnd::end)), 90, 1e-12);
    // Side and armhole run straight on; the dart of 2 atan(3/4) takes its angle out of the 180.
    EXPECT_NEAR(corner_angle(outline, runs[1], RunEnd::end), pi + 2 * std::atan(0.75), 1e-12)
        << "closing a dart in a straight line makes the cloth bulge beyond it";
    EXPECT_EQ(end_point(outline, runs[1], RunEnd::end), (Point{180, 200}));
    EXPECT_EQ(end_point(outline, runs[2], RunEnd::start), (Point{180, 260}));
}

TEST(corner_angle, may_be_a_hollow_corner) {
    Outline outline = sample::square({"hem", "side", "top", "centre"});
    outline.items[1].to = {50, 50};  // the side now leans in, so that side and top make a notch
    outline.items[2].to = {0, 100};
    const auto runs = runs_of(outline);
    EXPECT_NEAR(degrees(corner_angle(outline, runs[1], RunEnd::end)), 180, 1e-9);
    outline.items[1].to = {40, 40};
    EXPECT_GT(degrees(corner_angle(outline, runs_of(outline)[1], RunEnd::end)), 180);
}

TEST(corner_angle, takes_the_next_handle_where_one_lies_on_the_corner) {
    Outline outline = sample::square({"hem", "side", "top", "centre"});
    outline.items[1].as_edge()->shape = CubicShape{{Point{100, 0}, Point{100, 50}}};
    const auto runs = runs_of(outline);
    EXPECT_NEAR(degrees(corner_angle(outline, runs[0], RunEnd::end)), 90, 1e-12);
}

// --- Properties over generated pieces ------------------------------------------------------------------

// An arc length is good to 1e-9 of itself; the oracle is good to more.
double length_error(double length) {
    return 1e-9 * length + 1e-9;
}

Piece any_piece_with_fullness() {
    Piece piece = testing::any_piece(true, *testing::evenly(1, 4)).pattern.pieces[0];
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        EdgeItem* edge = piece.outline.items[i].as_edge();
        if (!edge || *testing::evenly(0, 3) != 0) continue;
        edge->fullness = testing::real_between(0, 0.5) * length_of_item(piece.outline, i);
    }
    return piece;
}

double length_to_parameter(const Curve& curve, double t) {
    if (const auto* line = std::get_if<Line>(&curve))
        return t * std::hypot(line->b.x - line->a.x, line->b.y - line->a.y);
    return double(length_by_oracle(std::get<Cubic>(curve), 0, t));
}

RC_GTEST_PROP(run_property, its_length_is_the_sum_of_its_curves_by_quadrature, ()) {
    const Piece piece = any_piece_with_fullness();
    for (const auto& run : runs_of(piece.outline)) {
        double sum = 0;
        for (const std::size_t item : run.items) {
            for (const Curve& curve : curves_of_item(piece.outline, item))
                sum += length_to_parameter(curve, 1);
            sum -= piece.outline.items[item].as_edge()->fullness;
        }
        RC_ASSERT(std::abs(run.length - sum) <= length_error(sum));
    }
}

RC_GTEST_PROP(run_property, every_item_is_in_exactly_one_run_or_corner, ()) {
    const Piece piece = any_piece_with_fullness();
    std::vector<int> seen(piece.outline.items.size());
    for (const auto& run : runs_of(piece.outline)) {
        for (const std::size_t i : run.items) ++seen[i];
        for (const std::size_t i : run.darts) ++seen[i];
        for (const std::size_t i : run.corner_darts_after) ++seen[i];
        for (const std::size_t i : run.items) RC_ASSERT(piece.outline.items[i].as_edge()->edge == run.edge);
    }
    RC_ASSERT(seen == std::vector<int>(seen.size(), 1));
}

RC_GTEST_PROP(run_property, where_the_outline_starts_changes_nothing_but_indices, ()) {
    const Piece piece = any_piece_with_fullness();
    Outline other = piece.outline;
    const auto by = testing::any_index_of(other.items);
    other.start = start_of_item(other, by);
    std::rotate(other.items.begin(), other.items.begin() + std::ptrdiff_t(by), other.items.end());
    const auto a = runs_of(piece.outline);
    const auto b = runs_of(other);
    RC_ASSERT(a.size() == b.size());
    for (const auto& run : a) {
        const auto* same = find_run(b, run.edge);
        RC_ASSERT(same != nullptr);
        RC_ASSERT(std::abs(run.length - same->length) <= 1e-9);
        RC_ASSERT(run.before == same->before && run.after == same->after);
        std::vector<std::size_t> shifted;
        for (const std::size_t i : same->items) shifted.push_back((i + by) % other.items.size());
        RC_ASSERT(run.items == shifted);
        RC_ASSERT(dart_distances(piece.outline, run).size() == dart_distances(other, *same).size());
    }
}

// The place's distance is measured back by quadrature, from the point alone.
RC_GTEST_PROP(run_property, a_place_lies_at_its_distance, ()) {
    const Piece piece = any_piece_with_fullness();
    const auto runs = runs_of(piece.outline);
    const auto& run = runs[testing::any_index_of(runs)];
    const double at = testing::real_between(0, 1) * run.length;
    const RunPlace place = place_on_run(piece.outline, run, at);
    double along = 0;
    double nearest = INFINITY;
    double passed = 0;
    for (const Curve& curve : curves_of_item(piece.outline, place.item)) {
        const ClosestPoint closest = closest_point(curve, place.point);
        if (closest.distance < nearest) {
            nearest = closest.distance;
            along = passed + length_to_parameter(curve, closest.parameter);
        }
        passed += length_to_parameter(curve, 1);
    }
    RC_ASSERT(nearest <= 1e-8);
    RC_ASSERT(std::abs(along - place.along_item) <= 1e-6);
    const double fullness = piece.outline.items[place.item].as_edge()->fullness;
    const auto starts = item_distances(piece.outline, run);
    const auto k = std::size_t(std::find(run.items.begin(), run.items.end(), place.item) - run.items.begin());
    RC_ASSERT(std::abs(starts[k] + along * (passed - fullness) / passed - at) <= 1e-6);
    RC_ASSERT(std::abs(norm(place.tangent) - 1) <= 1e-12);
}

RC_GTEST_PROP(run_property, laws_under_turning_reflecting_shifting_and_scaling, ()) {
    const Piece piece = any_piece_with_fullness();
    const testing::Similarity s{testing::real_between(-3, 3),
                                testing::log_between(0.1, 10),
                                *rc::gen::arbitrary<bool>(),
                                {testing::real_between(-500, 500), testing::real_between(-500, 500)}};
    const Piece copy = testing::image(s, piece);
    const auto copies = runs_of(copy.outline);
    for (const auto& run : runs_of(piece.outline)) {
        const auto* other = find_run(copies, run.edge);
        RC_ASSERT(other != nullptr);
        RC_ASSERT(std::abs(other->length - s.scale * run.length) <= 2 * length_error(other->length));
        RC_ASSERT(other->before == (s.is_reflected ? run.after : run.before));
        RC_ASSERT(other->darts.size() == run.darts.size());
        const double at = 0.3 * run.length;
        const Point place = place_on_run(piece.outline, run, at).point;
        const double there = s.is_reflected ? run.length - at : at;
        const Point found = place_on_run(copy.outline, *other, s.scale * there).point;
        // Beside a mouth rounding decides on which side the place is taken.
        for (const double mouth : dart_distances(piece.outline, run)) RC_PRE(std::abs(mouth - at) > 1e-3);
        RC_ASSERT(distance(testing::image(s, place), found) <= 4 * length_error(other->length) + 1e-8);
        for (const RunEnd end : {RunEnd::start, RunEnd::end}) {
            const bool is_start = (end == RunEnd::start) != s.is_reflected;
            const double turned = corner_angle(copy.outline, *other, is_start ? RunEnd::start : RunEnd::end);
            RC_ASSERT(std::abs(corner_angle(piece.outline, run, end) - turned) <= 1e-9);
        }
    }
}

// The corners, the mouths closed and the bends of the curves turn once round: exact geometry. Checked on
// straight edges, where all turning is at corners and joints.
RC_GTEST_PROP(run_property, the_corners_of_a_straight_piece_turn_once_round_less_its_darts, ()) {
    const Piece piece = testing::any_piece(false, 2).pattern.pieces[0];
    const auto polygon = flat_outline(piece.outline, DartsDrawn::to_points, 1).points;
    double turned = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point before = polygon[(i + polygon.size() - 1) % polygon.size()];
        const Point after = polygon[(i + 1) % polygon.size()];
        turned += angle_from(polygon[i] - before, after - polygon[i]);
    }
    RC_ASSERT(std::abs(turned - 2 * pi) <= 1e-9);
    for (const auto& run : runs_of(piece.outline)) {
        RC_ASSERT(std::abs(corner_angle(piece.outline, run, RunEnd::end) -
                           corner_angle(piece.outline, *find_run(runs_of(piece.outline), run.after),
                                        RunEnd::start)) <= 1e-15);
    }
}

}  // namespace
}  // namespace dartwright
