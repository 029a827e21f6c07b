// What is written: whole or not at all, and never over a file that was not to be replaced.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::vector<std::string> move_dart{"pivot",  bodice,       "--piece", "front",
                                         "--dart", "waist dart", "--to",    "shoulder@50%"};

std::vector<std::string> moving_to(const std::string& file, std::vector<std::string> more = {}) {
    std::vector<std::string> words = move_dart;
    words.insert(words.end(), {"-o", file});
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

TEST(output, is_the_same_to_a_file_as_to_standard_output) {
    Folder folder;
    EXPECT_EQ(dartwright(moving_to(folder / "moved.json")).status, 0);
    EXPECT_EQ(text_of_file(folder / "moved.json"), dartwright(move_dart).out);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"moved.json"});
}

TEST(output, that_exists_is_kept_unless_told) {
    Folder folder;
    const std::string file = folder.add("kept.json", "mine");
    const Ended kept = dartwright(moving_to(file));
    EXPECT_EQ(kept.status, 2);
    EXPECT_TRUE(says_one_line(kept, "--overwrite"));
    EXPECT_EQ(text_of_file(file), "mine");
    EXPECT_EQ(dartwright(moving_to(file, {"--overwrite"})).status, 0);
    EXPECT_EQ(text_of_file(file), dartwright(move_dart).out);
}

TEST(output, is_left_whole_by_an_operation_that_fails) {
    Folder folder;
    const std::string file = folder.add("kept.json", "mine");
    const Ended refused = dartwright(moving_to(file, {"--overwrite", "--angle", "80"}));
    EXPECT_EQ(refused.status, 4);
    EXPECT_EQ(text_of_file(file), "mine");
    EXPECT_EQ(folder.names(), std::vector<std::string>{"kept.json"});
}

TEST(output, may_replace_the_file_that_was_read) {
    Folder folder;
    const std::string file = folder.add("bodice.json", text_of_file(bodice));
    std::vector<std::string> words = moving_to(file, {"--overwrite"});
    words[1] = file;
    EXPECT_EQ(dartwright(words).status, 0);
    EXPECT_EQ(dartwright({"check", file}).status, 0);
    EXPECT_NE(text_of_file(file).find("\"operation\": \"pivot\""), std::string::npos);
}

TEST(output, into_a_folder_that_is_not_there_is_refused) {
    Folder folder;
    const Ended ended = dartwright(moving_to(folder / "none/moved.json"));
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, "none/moved.json"));
    const Ended directory = dartwright(moving_to(folder.path(), {"--overwrite"}));
    EXPECT_EQ(directory.status, 3);
    EXPECT_TRUE(says_one_line(directory, folder.path()));
}

TEST(output, without_permission_leaves_the_old_file) {
    Folder folder;
    const std::string file = folder.add("kept.json", "mine");
    support::give_to_owner_of(DARTWRIGHT_PROGRAM, file);
    support::give_to_owner_of(DARTWRIGHT_PROGRAM, folder.path());
    std::filesystem::permissions(folder.path(),
                                 std::filesystem::perms::owner_read | std::filesystem::perms::owner_exec);
    Process process = dartwright_with(moving_to(file, {"--overwrite"}));
    process.is_without_privileges = true;
    const Ended ended = support::run(process);
    std::filesystem::permissions(folder.path(), std::filesystem::perms::owner_all);
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, file + ": cannot be written: no permission"));
    EXPECT_EQ(text_of_file(file), "mine");
    EXPECT_EQ(folder.names(), std::vector<std::string>{"kept.json"});
}

TEST(output, on_a_full_disk_is_an_error) {
    const std::vector<std::vector<std::string>> commands{{"check", bodice},
                                                         {"show", bodice},
                                                         {"walk", bodice, "--seam", "side"},
                                                         {"measure", bodice, "--line", "waist"},
                                                         {"draw", bodice},
                                                         move_dart,
                                                         {"--help"},
                                                         {"check", "--help"}};
    for (const auto& words : commands) {
        Process process = dartwright_with(words);
        process.output_device = "/dev/full";
        const Ended ended = support::run(process);
        EXPECT_EQ(ended.status, 3) << words[0];
        EXPECT_NE(ended.err.find("standard output"), std::string::npos) << words[0] << ": " << ended.err;
    }
    const Ended file = dartwright(moving_to("/dev/full", {"--overwrite"}));
    EXPECT_EQ(file.status, 3);
    EXPECT_TRUE(says_one_line(file, "/dev/full: cannot be written"));
}

TEST(output, whose_reader_has_gone_is_no_error) {
    Folder folder;
    const Ended ended = shell(
        "dartwright draw " + in_shell_quotes(bodice) + " | head -c 1 > /dev/null; echo ${PIPESTATUS:-done}",
        folder.path());
    EXPECT_EQ(ended.err, "");
}

TEST(output, written_twice_is_the_same_to_the_byte) {
    const Ended once = dartwright(move_dart);
    const Ended again = dartwright(move_dart);
    EXPECT_EQ(once.out, again.out);
    EXPECT_FALSE(once.out.empty());
}

}  // namespace
}  // namespace dartwright
