// Splits of one piece typed by hand: what is opened, how it is named, what is refused.

#include "dartwright/darts/split.hpp"

#include "darts/plain_front.hpp"

namespace dartwright {
namespace {

SplitRequest among(std::vector<SplitPlace> places) {
    SplitRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.places = std::move(places);
    return request;
}

std::string refusal(const SplitRequest& request) {
    try {
        split(plain(), request);
    } catch (const Impossible& refused) {
        EXPECT_FALSE(refused.remedy.empty()) << refused.reason;
        return refused.what();
    }
    return "not refused";
}

TEST(Split, OpensEachShareAtItsPlaceAndLeavesTheRest) {
    const SplitResult result =
        split(plain(), among({{"side@100/waist", 0.5, "", ""}, {"shoulder@50%", 0.25, "top dart", ""}}));
    const double whole = 2 * std::atan(20.0 / 200);
    EXPECT_NEAR(figures(result.pattern, "side dart").angle_rad, whole / 2, 1e-12);
    EXPECT_NEAR(figures(result.pattern, "top dart").angle_rad, whole / 4, 1e-12);
    EXPECT_NEAR(figures(result.pattern, "waist dart").angle_rad, whole / 4, 1e-12);
    EXPECT_NEAR(result.account.angle_left_rad, whole / 4, 1e-12);
    ASSERT_EQ(result.account.opened.size(), 2u);
    EXPECT_EQ(result.account.opened[0].name, "side dart");
    EXPECT_NEAR(result.account.opened[0].intake_mm, figures(result.pattern, "side dart").intake, 1e-12);
    EXPECT_NEAR(result.account.old_intake_mm, 40, 1e-12);
}

TEST(Split, OfAllClosesTheOldDartAndMakesItsEdgeOneAgain) {
    const SplitResult result =
        split(plain(), among({{"side@100/waist", 0.5, "", ""}, {"shoulder@50%", 0.5, "", ""}}));
    EXPECT_FALSE(find_dart(result.pattern.pieces[0], "waist dart"));
    EXPECT_EQ(result.account.angle_left_rad, 0);
}

TEST(Split, NumbersDartsOfOneEdge) {
    const SplitResult result =
        split(plain(), among({{"side@80/waist", 0.5, "", ""}, {"side@200/waist", 0.5, "", ""}}));
    EXPECT_TRUE(find_dart(result.pattern.pieces[0], "side dart"));
    EXPECT_TRUE(find_dart(result.pattern.pieces[0], "side dart 2"));
}

TEST(Split, OfThreeThirdsIsAll) {
    const double third = 1.0 / 3;
    const SplitResult result = split(plain(), among({{"side@80/waist", third, "", ""},
                                                     {"side@200/waist", third, "", ""},
                                                     {"shoulder@50%", third, "", ""}}));
    EXPECT_FALSE(find_dart(result.pattern.pieces[0], "waist dart"));
}

TEST(Split, OfOnePlaceIsAPivotAndKeepsTheName) {
    const SplitResult result = split(plain(), among({{"side@80/waist", 1, "", ""}}));
    EXPECT_TRUE(find_dart(result.pattern.pieces[0], "waist dart"));
}

TEST(Split, WritesItsRequestWithEachKeyOnce) {
    const SplitResult result =
        split(plain(), among({{"side@100/waist", 0.5, "", ""}, {"shoulder@50%", 0.25, "top dart", "side"}}));
    ASSERT_EQ(result.pattern.made.size(), 1u);
    const auto& request = result.pattern.made[0].request;
    const std::vector<std::pair<std::string, std::string>> expected{
        {"piece", "front"},    {"dart", "waist dart"},       {"to", "side@100/waist=50%"},
        {"name", "side dart"}, {"to 2", "shoulder@50%=25%"}, {"name 2", "top dart"},
        {"press 2", "side"}};
    EXPECT_EQ(request, expected);
    EXPECT_EQ(read_pattern(write_pattern(result.pattern), "again").made, result.pattern.made);
}

TEST(Split, RefusesMoreThanThereIs) {
    EXPECT_TRUE(contains(refusal(among({{"side@100/waist", 0.7, "", ""}, {"shoulder@50%", 0.5, "", ""}})),
                         "add up to 120 %"));
}

TEST(Split, RefusesOnePlaceTwice) {
    EXPECT_TRUE(contains(refusal(among({{"side@100/waist", 0.5, "", ""}, {"side@100.4/waist", 0.5, "", ""}})),
                         "0.4 mm from the mouth of \"side dart\""));
}

TEST(Split, RefusesSharesOfNothingAndNoPlacesInWords) {
    EXPECT_THROW(split(plain(), among({{"side@100/waist", 0, "", ""}})), BadWords);
    EXPECT_THROW(split(plain(), among({{"side@100/waist", std::nan(""), "", ""}})), BadWords);
    EXPECT_THROW(split(plain(), among({})), BadWords);
}

TEST(Split, RefusesWhatAnyOneCutCannotReach) {
    EXPECT_TRUE(contains(refusal(among({{"side@100/waist", 0.5, "", ""}, {"centre front@50%", 0.5, "", ""}})),
                         "lies inside the fold"));
}

}  // namespace
}  // namespace dartwright
