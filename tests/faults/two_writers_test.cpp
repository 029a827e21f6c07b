// Two programs that write one file at once: it is one of the two, whole.

#include <fcntl.h>
#include <sys/stat.h>

#include "faulty.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

std::string pivot_to(const std::string& place) {
    return "dartwright pivot '" + block + "' --piece front --dart 'waist dart' --to " + place +
           " > /dev/null 2>&1";
}

TEST(two_writers, of_one_file_leave_one_of_the_two_whole) {
    Folder folder;
    ASSERT_EQ(shell(pivot_to("side@60/armhole") + " -o a.json; " + pivot_to("side@80/armhole") + " -o b.json",
                    folder.path())
                  .status,
              0);
    const std::string a = text_of_file(folder / "a.json");
    const std::string b = text_of_file(folder / "b.json");
    ASSERT_NE(a, b);
    for (int time = 0; time < (are_tests_long() ? 200 : 10); ++time) {
        std::filesystem::remove(folder / "o.json");
        // Without leave to replace it, one is refused.
        const Ended one = shell("(" + pivot_to("side@60/armhole") + " -o o.json; echo $?) & (" +
                                    pivot_to("side@80/armhole") + " -o o.json; echo $?) & wait",
                                folder.path());
        EXPECT_TRUE(one.out == "0\n2\n" || one.out == "2\n0\n") << one.out;
        const std::string first = text_of_file(folder / "o.json");
        EXPECT_TRUE(first == a || first == b);
        const Ended both = shell("(" + pivot_to("side@60/armhole") + " -o o.json --overwrite; echo $?) & (" +
                                     pivot_to("side@80/armhole") + " -o o.json --overwrite; echo $?) & wait",
                                 folder.path());
        EXPECT_EQ(both.out, "0\n0\n");
        const std::string last = text_of_file(folder / "o.json");
        EXPECT_TRUE(last == a || last == b);
        EXPECT_EQ(folder.names(), (std::vector<std::string>{"a.json", "b.json", "o.json"}));
    }
}

TEST(two_writers, of_one_file_of_lines_are_one_and_one_refused) {
    Folder folder;
    ASSERT_EQ(::mkfifo((folder / "pipe.json").c_str(), 0600), 0);
    const std::string assess = "dartwright assess '" + exercise + "' ";
    // The first waits for its draft at the pipe, which it gets when the second has ended.
    const Ended ended = shell(
        "(" + assess + "pipe.json --lines l.jsonl --format csv > first.csv) & exec 3> pipe.json; " + assess +
            "'" + block + "' --lines l.jsonl --resume; echo $?; cat '" + block + "' >&3; exec 3>&-; wait",
        folder.path());
    EXPECT_EQ(ended.out, "3\n");
    EXPECT_NE(ended.err.find("l.jsonl: another process adds lines to it"), std::string::npos) << ended.err;
    EXPECT_EQ(lines_in(text_of_file(folder / "l.jsonl")), 1U);
    EXPECT_EQ(lines_in(text_of_file(folder / "first.csv")), 2U);
}

}  // namespace
}  // namespace dartwright
