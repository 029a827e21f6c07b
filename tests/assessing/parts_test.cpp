// The parts that judging is made of: the ladder, the fit that a moved corner does not draw aside, and how
// runs and darts are recognised.

#include <gtest/gtest.h>

#include "dartwright/assessing/ladder.hpp"
#include "dartwright/assessing/matched_darts.hpp"
#include "dartwright/assessing/robust_fit.hpp"
#include "dartwright/assessing/run_matching.hpp"

namespace dartwright {
namespace {

TEST(ladder, difference_stands_on_the_first_rung_that_holds_it) {
    const Ladder& lengths = usual_ladders().lengths;
    EXPECT_EQ(standing(lengths, 0).rung, "full");
    EXPECT_EQ(standing(lengths, -1).rung, "full");
    EXPECT_EQ(standing(lengths, 1.001).rung, "accepted");
    EXPECT_EQ(standing(lengths, 25.4 / 16).share, 0.75);
    EXPECT_EQ(standing(lengths, 3).share, 0.5);
    EXPECT_EQ(standing(lengths, 3.2).rung, "fault");
    EXPECT_EQ(standing(lengths, 3.2).share, 0);
    EXPECT_FALSE(is_off(lengths, 1));
    EXPECT_TRUE(is_off(lengths, -1.1));
}

TEST(ladder, of_what_has_a_tolerance_begins_there) {
    const Ladder wide = ladder_from(usual_ladders().angles, 2);
    EXPECT_EQ(standing(wide, 2).rung, "full");
    EXPECT_EQ(standing(wide, 2.8).rung, "accepted");
    EXPECT_EQ(standing(wide, 7.9).rung, "noted");
    EXPECT_EQ(standing(wide, 8.1).rung, "fault");
    const Ladder narrow = ladder_from(usual_ladders().lengths, 0.1);
    EXPECT_EQ(standing(narrow, 0.2).rung, "accepted");
    EXPECT_EQ(standing(narrow, 3).rung, "noted") << "never narrower than it was";
    const Ladder from_nothing = ladder_from({{"full", 0, 1}, {"near", 2, 0.5}}, 1);
    EXPECT_EQ(standing(from_nothing, 1).rung, "full");
    EXPECT_EQ(standing(from_nothing, 3).rung, "near");
}

TEST(robust_fit, stays_with_what_was_kept_where_a_corner_was_moved) {
    const Motion motion = then(turn_about({10, 20}, turn_by(0.4)), shift_by({100, -30}));
    PlacePairs places;
    for (int i = 0; i < 20; ++i) {
        const Point p{10.0 * i, i % 3 * 40.0};
        places.from.push_back(p);
        // The last six were moved by 8 mm besides.
        places.to.push_back(apply(motion, p) + (i < 14 ? Vector{} : Vector{8, 0}));
    }
    const Motion fit = robust_fit(places);
    EXPECT_LT(distance(apply(fit, places.from[3]), places.to[3]), 1e-3);
    EXPECT_NEAR(angle(fit), 0.4, 1e-5);
    // What a least sum of squares would not do.
    EXPECT_GT(distance(apply(best_fit(places.from, places.to), places.from[3]), places.to[3]), 1);
}

const std::vector<RunSignature> kite{
    {"waist", 0.2, 1.6}, {"side", 0.3, 1.4}, {"armhole", 0.1, 2.5}, {"front", 0.4, 1.5}};

TEST(matched_runs, finds_other_names_by_shape_from_any_start) {
    const std::vector<RunSignature> drawn{{"c", 0.1, 2.5}, {"d", 0.4, 1.5}, {"a", 0.2, 1.6}, {"b", 0.3, 1.4}};
    const RunMatching best = matched_runs(kite, drawn).front();
    EXPECT_FALSE(best.is_mirrored);
    EXPECT_EQ(best.drawn, (std::vector<std::optional<std::size_t>>{2, 3, 0, 1}));
}

TEST(matched_runs, finds_a_piece_that_was_turned_over) {
    // The other way round, so that the corner at the end of each is the one that was at its start.
    const std::vector<RunSignature> drawn{{"d", 0.4, 2.5}, {"c", 0.1, 1.4}, {"b", 0.3, 1.6}, {"a", 0.2, 1.5}};
    const RunMatching best = matched_runs(kite, drawn).front();
    EXPECT_TRUE(best.is_mirrored);
    EXPECT_EQ(best.drawn, (std::vector<std::optional<std::size_t>>{3, 2, 1, 0}));
}

TEST(matched_runs, goes_by_names_where_an_edge_is_missing) {
    const std::vector<RunSignature> drawn{{"front", 0.5, 1.5}, {"waist", 0.2, 1.6}, {"side", 0.3, 1.4}};
    const RunMatching best = matched_runs(kite, drawn).front();
    EXPECT_EQ(best.drawn, (std::vector<std::optional<std::size_t>>{1, 2, std::nullopt, 0}));
}

struct Darts {
    std::vector<AskedDart> asked;
    std::vector<AskedClosed> closed;
    std::vector<StandingDart> drawn;

    MatchedDarts matched() const {
        DartsOfPiece piece{{}, {}, 1000};
        for (const AskedDart& each : asked) piece.asked.push_back(&each);
        for (const AskedClosed& each : closed) piece.closed.push_back(&each);
        return matched_darts(piece, drawn);
    }
};
// The side begins 300 mm round the piece, the waist at its start.
StandingDart standing(double around_mm) {
    StandingDart dart;
    dart.edge = around_mm < 300 ? "waist" : "side";
    dart.around_mm = around_mm;
    return dart;
}
Darts waist_to_side() {
    Darts darts;
    darts.asked.emplace_back();
    darts.asked[0].dart = standing(400);
    darts.closed.emplace_back();
    darts.closed[0].dart.edge = "waist";
    darts.closed[0].around_mm = 100;
    return darts;
}

TEST(matched_darts, dart_that_was_not_moved_is_the_old_one) {
    Darts darts = waist_to_side();
    darts.drawn = {standing(101)};
    EXPECT_EQ(darts.matched().asked[0], std::nullopt);
    EXPECT_EQ(darts.matched().closed[0], 0u);
}

TEST(matched_darts, dart_in_a_wrong_place_is_the_one_that_was_asked_for) {
    Darts darts = waist_to_side();
    darts.drawn = {standing(700)};
    EXPECT_EQ(darts.matched().asked[0], 0u);
    EXPECT_EQ(darts.matched().closed[0], std::nullopt);
}

TEST(matched_darts, both_there_are_the_new_one_and_the_old_one_left_and_a_third_is_extra) {
    Darts darts = waist_to_side();
    darts.drawn = {standing(104), standing(390), standing(900)};
    const MatchedDarts matched = darts.matched();
    EXPECT_EQ(matched.asked[0], 1u);
    EXPECT_EQ(matched.closed[0], 0u);
    EXPECT_EQ(matched.extra, std::vector<std::size_t>{2});
}

}  // namespace
}  // namespace dartwright
