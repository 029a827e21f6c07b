// Replay by example: what it refuses, and how it says so.

#include "dartwright/darts/replay.hpp"

#include <gtest/gtest.h>

#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

Pattern block() {
    return read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
}

Made pivot_to(const std::string& place) {
    return {"pivot", {{"piece", "front"}, {"dart", "waist dart"}, {"to", place}}};
}

// What is said of a list that cannot be done.
template <class Error>
std::string refused(const std::vector<Made>& made) {
    try {
        replay(block(), made);
    } catch (const Error& error) {
        return error.what();
    }
    return "nothing";
}

TEST(replay, does_each_kind_of_operation) {
    Pattern pattern = block();
    pattern = pivot(pattern, {"front", "waist dart", "side@60/armhole", {{}, 0.5, {}}, 12.0, "", "", "", ""})
                  .pattern;
    pattern = true_dart(pattern, {"front", "side dart"}).pattern;
    pattern = merge(pattern, {"front", "waist dart", "bust dart", "", ""}).pattern;
    pattern = true_edge(pattern, {"front", "waist"}).pattern;
    pattern = repoint(pattern, {"front", "side dart", 15.0, {}, {}, {}}).pattern;
    pattern = repoint(pattern, {"front", "", {}, {}, Point{385, 162}, Point{391.5, 170}}).pattern;
    pattern = true_seam(pattern, {"side", "armhole", "back", 30}).pattern;
    const ReplayResult again = replay(block(), pattern.made);
    EXPECT_EQ(again.steps.size(), 7u);
    EXPECT_EQ(write_pattern(again.pattern), write_pattern(pattern));
}

TEST(replay, of_nothing_is_the_block) {
    EXPECT_EQ(write_pattern(replay(block(), {}).pattern), write_pattern(block()));
}

TEST(replay, uses_the_tolerances_of_an_operation_and_keeps_the_patterns_own) {
    Pattern crooked = block();
    // The waist dart's second leg 0.8 mm longer, to its pivot: over the 0.5 mm that count as equal.
    OutlineItem& dart = crooked.pieces[0].outline.items[1];
    const Vector leg = dart.to - *dart.as_dart()->pivot;
    dart.to = dart.to + 0.8 * unit(leg);
    Made made = pivot_to("side@60/armhole");
    EXPECT_THROW(replay(crooked, {made}), Impossible);
    add_tolerances(made, {{"legs", 1.0}, {"kink", 2.5}});
    EXPECT_EQ(made.request.back(), (std::pair<std::string, std::string>{"tolerance kink", "2.5"}));
    const ReplayResult again = replay(crooked, {made});
    EXPECT_TRUE(again.pattern.tolerances.empty());
    EXPECT_EQ(again.pattern.made, std::vector<Made>{made});
}

TEST(replay, names_the_operation_that_there_is_none_of) {
    EXPECT_EQ(refused<BadWords>({pivot_to("side@60/armhole"), {"swirl", {}}})
                  .find("operation 2, swirl: there is no "
                        "operation \"swirl\"; there is "
                        "\"pivot\", \"split\""),
              0u);
}

TEST(replay, names_the_key_that_it_does_not_know_or_misses) {
    Made made = pivot_to("side@60/armhole");
    made.request.push_back({"speed", "fast"});
    EXPECT_EQ(refused<BadWords>({made}),
              "operation 1, pivot: the request has \"speed\", which pivot does not know");
    made.request = {{"piece", "front"}};
    EXPECT_EQ(refused<BadWords>({made}), "operation 1, pivot: \"dart\" is missing from the request");
}

TEST(replay, says_which_operation_is_not_possible_or_names_what_is_not_there) {
    EXPECT_EQ(refused<Impossible>({pivot_to("side@900/armhole")}).find("operation 1, pivot: "), 0u);
    const std::vector<Made> twice{
        pivot_to("side@60/armhole"),
        {"merge", {{"piece", "front"}, {"dart", "waist dart"}, {"with", "no dart"}}}};
    EXPECT_EQ(refused<BadWords>(twice).find("operation 2, merge: no dart \"no dart\""), 0u);
}

TEST(replay, reads_every_request_before_the_first_is_done) {
    // The first is not possible, the second has a wrong word: the word is told.
    Made wrong = pivot_to("side@60/armhole");
    wrong.request.push_back({"share", "half"});
    EXPECT_EQ(refused<BadWords>({pivot_to("side@900/armhole"), wrong}).find("operation 2, pivot: "), 0u);
}

TEST(replay, refuses_a_block_with_another_beginning) {
    Pattern other = block();
    other.made = {pivot_to("neck@50%")};
    EXPECT_THROW(replay(other, {pivot_to("side@60/armhole")}), BadWords);
}

TEST(performed, adds_the_operation_to_the_list_of_the_pattern) {
    Made asked = pivot_to("side@60/armhole");
    asked.request.emplace_back("tolerance legs", "0.4");
    const Pattern pattern = performed(block(), asked);
    ASSERT_EQ(pattern.made.size(), 1u);
    // The tolerance is the operation's alone.
    const auto& words = pattern.made[0].request;
    EXPECT_EQ(words.back(), std::make_pair(std::string("tolerance legs"), std::string("0.4")));
    EXPECT_EQ(pattern.tolerances, block().tolerances);
    EXPECT_EQ(write_pattern(replay(block(), pattern.made).pattern), write_pattern(pattern));
}

TEST(performed, refuses_by_the_kind_of_what_is_wrong) {
    EXPECT_THROW(performed(block(), {"fold", {}}), BadWords);
    EXPECT_THROW(performed(block(), {"pivot", {{"piece", "front"}}}), BadWords);
    EXPECT_THROW(performed(block(), {"open", {{"piece", "sleeve"}}}), UnknownName);
    EXPECT_THROW(performed(block(), pivot_to("centre front@50%")), Impossible);
    EXPECT_THROW(performed(block(), pivot_to("side@900/armhole")), Impossible);
}

}  // namespace
}  // namespace dartwright
