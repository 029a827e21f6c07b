// replay, as a process.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

// A chain of four operations, each read from the file of the one before.
void make_chain(const Folder& folder) {
    const Ended ended = shell(
        "dartwright pivot " + in_shell_quotes(block) +
            " --piece front --dart 'waist dart' --to side@60/armhole --angle 8 | "
            "dartwright split - --piece front --dart 'bust dart' --to neck@50%=1/3 --to 'shoulder@50%=2/3' | "
            "dartwright merge - --piece front --dart 'neck dart' --with 'waist dart' --tolerance legs=0.7 | "
            "dartwright true - --piece front --dart 'side dart' -o made.json",
        folder.path());
    ASSERT_EQ(ended.status, 0) << ended.err;
}

TEST(replay_command, gives_the_same_file_again) {
    Folder folder;
    make_chain(folder);
    const Ended ended = dartwright({"replay", folder / "made.json", "--block", block});
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(ended.out, text_of_file(folder / "made.json"));
    EXPECT_EQ(ended.err.find("4 operations done\n  pivot, piece front, "), 0u) << ended.err;
    EXPECT_NE(ended.err.find("made.json, to the last digit\n"), std::string::npos) << ended.err;
    EXPECT_NE(ended.err.find(", tolerance legs 0.7mm\n"), std::string::npos) << ended.err;
}

TEST(replay_command, checks_and_ends_with_1_where_the_list_does_not_tell_all) {
    Folder folder;
    make_chain(folder);
    const std::string made = folder / "made.json";
    EXPECT_EQ(dartwright({"replay", made, "--block", block, "--check"}).status, 0);
    write_text(made, replaced(text_of_file(made), "\"at\": 9.5", "\"at\": 9.6"));
    const Ended changed = dartwright({"replay", made, "--block", block, "--check", "--format", "json"});
    EXPECT_EQ(changed.status, 1);
    const Json verdict = Json::parse(changed.out);
    EXPECT_EQ(verdict["dartwright_replay"], 1);
    EXPECT_EQ(verdict["same"], false);
    EXPECT_NEAR(verdict["largest_difference"].get<double>(), 1, 1e-9);
    EXPECT_EQ(verdict["operations"], Json({"pivot", "split", "merge", "true"}));
}

TEST(replay_command, says_what_differs_where_it_is_no_number) {
    Folder folder;
    make_chain(folder);
    const std::string text =
        replaced(text_of_file(folder / "made.json"), "\"kind\": \"double\"", "\"kind\": \"triple\"");
    const Ended ended = dartwright({"replay", "-", "--block", block, "--check"}, text);
    EXPECT_EQ(ended.status, 1);
    EXPECT_NE(ended.out.find("at /pieces/1/notches/2/kind it has \"triple\", and the replay \"double\""),
              std::string::npos)
        << ended.out;
}

TEST(replay_command, refuses_in_one_line) {
    Folder folder;
    make_chain(folder);
    const std::string made = folder / "made.json";
    const Ended none = dartwright({"replay", made});
    EXPECT_EQ(none.status, 2);
    EXPECT_TRUE(says_one_line(none, "--block"));
    const Ended unknown = dartwright({"replay", "-", "--block", block},
                                     replaced(text_of_file(made), "\"merge\"", "\"mingle\""));
    EXPECT_EQ(unknown.status, 2);
    EXPECT_TRUE(says_one_line(unknown, "operation 3, mingle: there is no operation"));
    const Ended both = dartwright({"replay", made, "--block", block, "--check", "-o", folder / "out.json"});
    EXPECT_EQ(both.status, 2);
    EXPECT_TRUE(says_one_line(both, "leave -o out"));
}

}  // namespace
}  // namespace dartwright
