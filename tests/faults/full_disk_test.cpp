// A disk with little room, and a limit on the size of files: the old file stays whole, what was marked is
// kept.

#include "faulty.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
const std::string drafts = source_folder + "/fixtures/exercises/chorus-class/drafts";
const std::string old_text = "what was there before\n";

std::vector<std::vector<std::string>> writing_commands() {
    return {{"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole", "-o",
             "o.json"},
            {"draw", block, "-o", "o.svg"},
            {"draw", block, "--pixels-per-mm", "0.2", "-o", "o.png"},
            {"print", bodice, "-o", "o.pdf"},
            {"sheet", bodice, "--width", "140cm", "-o", "o.html"},
            {"assess", exercise, drafts, "--format", "html", "-o", "o.html"}};
}

TEST(full_disk, leaves_the_old_file_whole) {
    for (std::vector<std::string> words : writing_commands()) {
        Folder whole;
        const std::string name = words.back();
        words.back() = whole / name;
        EXPECT_LE(dartwright(words).status, 1);
        const std::string new_text = text_of_file(whole / name);
        const long size = static_cast<long>(new_text.size());
        for (const long room : {0L, 1L, size / 2, size - 1}) {
            SCOPED_TRACE(words[0] + " to " + name + ", room for " + std::to_string(room));
            Folder folder;
            words.back() = folder.add(name, old_text);
            std::vector<std::string> over = words;
            over.push_back("--overwrite");
            const Ended ended = with_faults(over, {"FAULT_ROOM=" + std::to_string(room)});
            EXPECT_EQ(ended.status, 3);
            EXPECT_EQ(lines_in(ended.err), 1U) << ended.err;
            EXPECT_NE(ended.err.find("the disk is full"), std::string::npos) << ended.err;
            EXPECT_EQ(text_of_file(folder / name), old_text);
            EXPECT_EQ(folder.names(), std::vector<std::string>{name});
        }
    }
}

TEST(full_disk, keeps_what_was_marked_and_goes_on_when_there_is_room) {
    Folder whole;
    const auto marking = [](const Folder& folder) {
        return std::vector<std::string>{
            "assess",  exercise, drafts, "--format", "csv", "--jobs", "2", "--lines", folder / "class.jsonl",
            "--resume"};
    };
    const Ended first = dartwright(marking(whole));
    const std::string lines = text_of_file(whole / "class.jsonl");
    const long size = static_cast<long>(lines.size());
    for (const long room : {0L, 10L, size / 3, size - 1}) {
        Folder folder;
        const Ended full = with_faults(marking(folder), {"FAULT_ROOM=" + std::to_string(room)});
        EXPECT_EQ(full.status, 3);
        EXPECT_TRUE(says_one_line(full, "class.jsonl: cannot be written")) << full.err;
        EXPECT_EQ(lines.rfind(text_of_file(folder / "class.jsonl"), 0), 0U);
        EXPECT_EQ(dartwright(marking(folder)).out, first.out);
        EXPECT_EQ(text_of_file(folder / "class.jsonl"), lines);
    }
}

// 512 bytes a unit: the shell's own measure.
TEST(limit_of_file_size, leaves_the_old_file_whole) {
    for (std::vector<std::string> words : writing_commands()) {
        Folder folder;
        const std::string name = words.back();
        folder.add(name, old_text);
        std::string line = "ulimit -f 1; dartwright";
        for (const std::string& word : words) line += " " + in_shell_quotes(word);
        const Ended ended = shell(line + " --overwrite", folder.path());
        EXPECT_EQ(ended.status, 3) << line << ended.err;
        EXPECT_EQ(text_of_file(folder / name), old_text) << line;
        EXPECT_EQ(folder.names(), std::vector<std::string>{name}) << line;
    }
}

}  // namespace
}  // namespace dartwright
