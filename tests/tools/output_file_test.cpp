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

// The name of the file beside it must not be longer.
TEST(output, may_have_the_longest_name_of_the_file_system) {
    Folder folder;
    const std::string name = std::string(250, 'x') + ".json";
    for (int times = 1; times <= 2; ++times) {
        EXPECT_EQ(dartwright(moving_to(folder / name, {"--overwrite"})).status, 0) << times;
        EXPECT_EQ(folder.names(), std::vector<std::string>{name});
    }
    const Ended longer = dartwright(moving_to(folder / ("x" + name)));
    EXPECT_EQ(longer.status, 3);
    EXPECT_TRUE(says_one_line(longer, "the name is too long"));
}

TEST(output, goes_where_links_lead) {
    Folder folder;
    folder.add("old.json", "mine");
    std::filesystem::create_symlink("old.json", folder / "to-old");
    std::filesystem::create_symlink("to-new-too", folder / "to-new");
    std::filesystem::create_symlink("new.json", folder / "to-new-too");
    EXPECT_EQ(dartwright(moving_to(folder / "to-new")).status, 0);
    EXPECT_EQ(dartwright(moving_to(folder / "to-old", {"--overwrite"})).status, 0);
    const std::string moved = dartwright(move_dart).out;
    EXPECT_EQ(text_of_file(folder / "new.json"), moved);
    EXPECT_EQ(text_of_file(folder / "old.json"), moved);
    for (const char* link : {"to-old", "to-new", "to-new-too"})
        EXPECT_TRUE(std::filesystem::is_symlink(folder / link)) << link;
}

TEST(output, by_links_that_go_round_is_refused) {
    Folder folder;
    std::filesystem::create_symlink("b", folder / "a");
    std::filesystem::create_symlink("a", folder / "b");
    const Ended ended = dartwright(moving_to(folder / "a", {"--overwrite"}));
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, "its links lead round in a circle"));
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"a", "b"}));
}

TEST(output, has_the_permissions_of_the_old_file_or_of_a_new_one) {
    Folder folder;
    const auto permissions = [&](const std::string& name) {
        return std::filesystem::status(folder / name).permissions();
    };
    using std::filesystem::perms;
    folder.add("old.json", "mine");
    std::filesystem::permissions(folder / "old.json",
                                 perms::owner_read | perms::owner_write | perms::others_read);
    EXPECT_EQ(dartwright(moving_to(folder / "old.json", {"--overwrite"})).status, 0);
    EXPECT_EQ(permissions("old.json"), perms::owner_read | perms::owner_write | perms::others_read);
    const Ended made = shell("umask 027; dartwright pivot '" + bodice +
                                 "' --piece front --dart 'waist dart' --to shoulder@50% -o new.json",
                             folder.path());
    EXPECT_EQ(made.status, 0) << made.err;
    EXPECT_EQ(permissions("new.json"), perms::owner_read | perms::owner_write | perms::group_read);
}

// The account comes after the file is in place; where it cannot be said, the file still is.
TEST(output, that_is_in_place_is_told_when_the_account_cannot_be_said) {
    Folder folder;
    Process process = dartwright_with(moving_to(folder / "moved.json"));
    process.output_device = "/dev/full";
    const Ended ended = support::run(process);
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, "moved.json is written"));
    EXPECT_EQ(text_of_file(folder / "moved.json"), dartwright(move_dart).out);
}

// The limit ends a program by a signal, unless that is held off.
TEST(output, beyond_the_size_that_a_file_may_have_leaves_nothing) {
    Folder folder;
    const Ended ended = shell("ulimit -f 1; dartwright print '" + bodice + "' -o pages.pdf", folder.path());
    EXPECT_EQ(ended.status, 3) << ended.err;
    EXPECT_TRUE(says_one_line(ended, "larger than a file may be here"));
    EXPECT_TRUE(folder.names().empty());
}

}  // namespace
}  // namespace dartwright
