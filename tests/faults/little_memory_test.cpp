// Threads that cannot be started and memory that is not there: the class is marked by what there is, and what
// was too large says so.

#include "faulty.hpp"

namespace dartwright {
namespace {

const std::string drafts = source_folder + "/fixtures/exercises/chorus-class/drafts";

/// A pattern that needs more at once than half of this.
constexpr std::size_t large_bytes = 4 << 20;
std::string large_pattern() {
    return replaced(text_of_file(bodice), "{", "{" + std::string(large_bytes, ' '));
}

TEST(threads, are_those_there_are) {
    const std::vector<std::string> words{"assess", exercise, drafts, "--format", "csv", "--jobs", "8"};
    const Ended whole = dartwright(words);
    EXPECT_GT(lines_in(whole.out), 3U);
    for (const char* started : {"0", "1", "3"}) {
        const Ended ended = with_faults(words, {std::string("FAULT_THREADS=") + started});
        EXPECT_EQ(ended.status, whole.status) << started << ended.err;
        EXPECT_EQ(ended.out, whole.out) << started;
        EXPECT_EQ(ended.err, whole.err) << started;
    }
}

TEST(memory, that_is_short_for_one_draft_leaves_the_others_their_marks) {
    Folder folder;
    folder.add("a.json", text_of_file(bodice));
    folder.add("b.json", large_pattern());
    folder.add("c.json", text_of_file(bodice));
    for (const char* jobs : {"1", "4"}) {
        const Ended ended =
            with_faults({"assess", exercise, folder.path(), "--format", "json", "--jobs", jobs},
                        {"FAULT_MEMORY=" + std::to_string(large_bytes / 2)});
        EXPECT_EQ(ended.status, 3) << ended.err;
        const Json read = Json::parse(ended.out);
        ASSERT_EQ(read["drafts"].size(), 3U);
        EXPECT_EQ(read["drafts"][0]["unread"], nullptr);
        EXPECT_EQ(read["drafts"][1]["unread"], "out of memory while reading it");
        EXPECT_EQ(read["drafts"][1]["unread_kind"], "too little memory");
        EXPECT_EQ(read["drafts"][2]["unread"], nullptr);
    }
}

// It is tried again when the class is gone on with: nothing is known of such a draft.
TEST(memory, that_was_short_is_no_verdict_to_be_kept) {
    Folder folder;
    folder.add("b.json", large_pattern());
    const std::string lines = folder / "class.jsonl";
    const std::vector<std::string> words{"assess",  exercise, folder / "b.json", "--format", "csv",
                                         "--lines", lines,    "--resume"};
    EXPECT_EQ(with_faults(words, {"FAULT_MEMORY=" + std::to_string(large_bytes / 2)}).status, 3);
    const Ended again = dartwright(words);
    EXPECT_EQ(again.out.find("out of memory"), again.out.npos) << again.out;
    EXPECT_EQ(again.out, dartwright({"assess", exercise, folder / "b.json", "--format", "csv"}).out);
}

TEST(memory, that_is_short_for_the_run_is_said_in_one_line) {
    Folder folder;
    const std::string large = folder.add("b.json", large_pattern());
    const std::string limit = "FAULT_MEMORY=" + std::to_string(large_bytes / 2);
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"show", large}, {"assess", large, bodice}, {"compare", large, bodice}}) {
        const Ended ended = with_faults(words, {limit});
        EXPECT_EQ(ended.status, 3) << ended.err;
        EXPECT_TRUE(says_one_line(ended, "out of memory")) << ended.err;
        EXPECT_EQ(ended.err.find("internal"), ended.err.npos) << ended.err;
    }
    const Ended checked = with_faults({"check", large, bodice}, {limit});
    EXPECT_EQ(checked.status, 3) << checked.err;
    EXPECT_NE(checked.out.find("out of memory while reading it"), checked.out.npos) << checked.out;
}

// Of the shell's own kind: so much of the address space in kB, stacks of threads among it.
TEST(memory, within_a_limit_of_the_process_marks_all_or_says_so) {
    Folder folder;
    const std::string words = " assess '" + exercise + "' '" + drafts + "' --format csv --jobs 64";
    const Ended whole = shell("dartwright" + words, folder.path());
    std::size_t marked = 0;
    for (const char* limit : {"100000", "200000", "400000", "800000"}) {
        const Ended ended = shell(std::string("ulimit -v ") + limit + "; dartwright" + words, folder.path());
        if (ended.out == whole.out && ended.status == whole.status) {
            ++marked;
            continue;
        }
        EXPECT_EQ(ended.status, 3) << limit << ended.err;
        EXPECT_NE((ended.out + ended.err).find("out of memory"), std::string::npos) << limit << ended.err;
    }
    EXPECT_GE(marked, 1U);
}

}  // namespace
}  // namespace dartwright
