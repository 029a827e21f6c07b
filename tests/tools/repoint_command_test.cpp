// repoint, as a process.

#include <cmath>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

TEST(repoint_command, moves_a_point_by_its_back_off_or_its_place) {
    const Ended back_off = dartwright({"repoint", block, "--piece", "front", "--dart", "waist dart",
                                       "--back-off", "3cm", "--format", "json"});
    ASSERT_EQ(back_off.status, 0) << back_off.err;
    const Json account = Json::parse(back_off.err);
    EXPECT_EQ(account["dartwright_repoint"], 1);
    EXPECT_NEAR(account["darts"][0]["after"]["back_off"].get<double>(), 30, 1e-9);
    EXPECT_NEAR(account["darts"][0]["after"]["point"][1].get<double>(), 140, 1e-9);
    EXPECT_EQ(account["darts"][0]["before"]["angle"], account["darts"][0]["after"]["angle"]);
    EXPECT_EQ(dartwright({"check", "-"}, back_off.out).status, 0);
    const Ended point = dartwright({"repoint", block, "--piece", "front", "--dart", "waist dart", "--point",
                                    "39.15cm,14cm", "--format", "json"});
    ASSERT_EQ(point.status, 0) << point.err;
    EXPECT_EQ(Json::parse(point.err)["darts"], account["darts"]);
}

TEST(repoint_command, moves_the_bust_point_with_its_darts_and_no_seam) {
    Folder folder;
    const Ended ended = dartwright({"repoint", block, "--piece", "front", "--pivot", "38.5cm,16.2cm", "-o",
                                    folder / "lower.json", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.out);
    ASSERT_EQ(account["darts"].size(), 2u);
    for (const Json& dart : account["darts"]) {
        EXPECT_EQ(dart["after"]["pivot"], Json({385.0, 162.0}));
        EXPECT_NEAR(dart["after"]["legs"][0].get<double>(), dart["after"]["legs"][1].get<double>(), 1e-9);
        EXPECT_NEAR(dart["after"]["back_off"].get<double>(), dart["before"]["back_off"].get<double>(), 1e-9);
    }
    EXPECT_EQ(account["darts"][1]["mouth_after"], nullptr);
    EXPECT_EQ(account["marks"], Json({"bust point"}));
    for (const Json& run : account["runs"])
        EXPECT_NEAR(run["before"].get<double>(), run["after"].get<double>(), 1e-6);
    EXPECT_EQ(dartwright({"check", folder / "lower.json"}).status, 0);
    EXPECT_EQ(dartwright({"replay", folder / "lower.json", "--block", block, "--check"}).status, 0);
}

TEST(repoint_command, says_in_words_what_became_of_each_dart) {
    const Ended ended =
        dartwright({"repoint", block, "--piece", "front", "--dart", "waist dart", "--back-off", "25"});
    EXPECT_EQ(ended.err.find("Aimed anew on front:\n  waist dart\n"), 0u);
    EXPECT_NE(ended.err.find("    back-off: 2.00 cm, now 2.50 cm\n"), std::string::npos) << ended.err;
    EXPECT_NE(ended.err.find("    mouth: 4.00 cm, as it was\n"), std::string::npos) << ended.err;
}

struct Refused {
    std::vector<std::string> more;
    int status;
    const char* says;
};
void PrintTo(const Refused& refused, std::ostream* out) {
    *out << refused.says;
}
class repoint_refusals : public testing::TestWithParam<Refused> {};

TEST_P(repoint_refusals, say_why_and_write_nothing) {
    Folder folder;
    std::vector<std::string> words{"repoint", block, "--piece", "front", "-o", folder / "aimed.json"};
    words.insert(words.end(), GetParam().more.begin(), GetParam().more.end());
    const Ended ended = dartwright(words);
    EXPECT_EQ(ended.status, GetParam().status);
    EXPECT_TRUE(says_one_line(ended, GetParam().says));
    EXPECT_EQ(ended.out, "");
    EXPECT_TRUE(folder.names().empty());
}

INSTANTIATE_TEST_SUITE_P(
    all, repoint_refusals,
    testing::Values(
        Refused{{"--dart", "waist dart"}, 2, "--back-off, --point or --pivot is missing"},
        Refused{{"--dart", "waist dart", "--back-off", "5", "--point", "3,4"}, 2, "give one"},
        Refused{{"--back-off", "5"}, 2, "--dart is missing"},
        Refused{{"--dart", "waist dart", "--back-off", "5", "--from", "3,4"}, 2, "it goes with --pivot"},
        Refused{{"--dart", "waist dart", "--pivot", "385,160", "--from", "3,4"}, 2, "give one"},
        Refused{{"--dart", "waist dart", "--back-off", "-5"}, 2, "expected 0 or more"},
        Refused{{"--dart", "waist dart", "--back-off", "100"}, 4, "set a back-off of at most 87.6 mm"},
        Refused{{"--dart", "waist dart", "--point", "39.15"}, 2, "expected X,Y such as"},
        Refused{{"--dart", "waist dart", "--point", "39.15cm;14cm"}, 2, "expected X,Y such as"},
        Refused{{"--dart", "waist dart", "--point", "39.15cm,50%"}, 2, "expected X,Y such as"},
        Refused{{"--dart", "waist dart", "--point", "39.3cm,14cm"}, 4, "does is (391.5, 140.0) mm"},
        Refused{{"--dart", "waist dart", "--point", "391.5,180"}, 4, "10.0 mm beyond it"},
        Refused{{"--dart", "side dart", "--back-off", "5"}, 2, "there is \"waist dart\", \"bust dart\""},
        Refused{{"--pivot", "-3,-4"}, 4, "outside the piece; the nearest place on the way there"},
        Refused{{"--pivot", "385,160", "--from", "0,0"}, 2, "aims at (391.5, 170.0) mm"},
        Refused{{"--pivot", "385,160", "--span", "-1"}, 2, "expected 0, or 1 mm or more"}));

}  // namespace
}  // namespace dartwright
