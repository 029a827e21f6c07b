// open, as a process.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

TEST(open_command, gives_the_whole_and_its_account) {
    const Ended ended = dartwright({"open", block, "--piece", "front", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.err);
    EXPECT_EQ(account["dartwright_open"], 1);
    EXPECT_EQ(account["drawn_side"], "left");
    EXPECT_NEAR(account["area_after"].get<double>(), 2 * account["area_before"].get<double>(), 1e-6);
    EXPECT_EQ(account["seams"][0]["now"], Json({"left side", "right side"}));
    EXPECT_EQ(account["darts"][0], Json({"left waist dart", "right waist dart"}));
    EXPECT_EQ(dartwright({"check", "-"}, ended.out).status, 0);
}

TEST(open_command, pipes_into_a_pivot_across_the_middle) {
    Folder folder;
    const Ended ended = shell("dartwright open " + in_shell_quotes(block) +
                                  " --piece front | dartwright pivot - --piece front --dart 'left bust dart' "
                                  "--to 'right neck@50%' --hold 'right side' -o moved.json",
                              folder.path());
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(dartwright({"replay", folder / "moved.json", "--block", block, "--check"}).status, 0);
}

TEST(open_command, refuses_in_one_line) {
    const Ended pair = dartwright({"open", block, "--piece", "back"});
    EXPECT_EQ(pair.status, 4);
    EXPECT_TRUE(says_one_line(pair, "\"back\" is not cut on a fold"));
    EXPECT_EQ(dartwright({"open", block}).status, 2);
    EXPECT_EQ(dartwright({"open", block, "--piece", "frnt"}).status, 2);
}

}  // namespace
}  // namespace dartwright
