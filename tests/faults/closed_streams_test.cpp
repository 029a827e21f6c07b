// Streams that are closed: what was meant for them goes nowhere, and into no file.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
const std::string pivot =
    "dartwright pivot '" + block + "' --piece front --dart 'waist dart' --to side@60/armhole";
const std::vector<std::string> closings{"<&-",      ">&-",      "2>&-",         "<&- >&-",
                                        "<&- 2>&-", ">&- 2>&-", "<&- >&- 2>&-", "> /dev/full"};

bool is_output_gone(const std::string& closing) {
    return closing == "> /dev/full" || closing.find(">&-") == 0 || closing.find(" >&-") != closing.npos;
}

TEST(closed_streams, leave_the_file_of_o_as_it_is_meant) {
    Folder folder;
    ASSERT_EQ(shell(pivot + " -o good.json", folder.path()).status, 0);
    for (const std::string& closing : closings) {
        const Ended ended = shell(pivot + " -o out.json --overwrite " + closing, folder.path());
        EXPECT_EQ(ended.status, is_output_gone(closing) ? 3 : 0) << closing << ended.err;
        EXPECT_EQ(text_of_file(folder / "out.json"), text_of_file(folder / "good.json")) << closing;
        EXPECT_EQ(folder.names(), (std::vector<std::string>{"good.json", "out.json"})) << closing;
    }
}

TEST(closed_streams, leave_kept_lines_and_the_report_as_they_are_meant) {
    Folder folder;
    const std::string assess = "dartwright assess '" + exercise + "' '" + block + "' --format csv --jobs 2 ";
    ASSERT_EQ(shell(assess + "--lines good.jsonl -o good.csv", folder.path()).status, 1);
    for (const std::string& closing : closings) {
        const Ended ended =
            shell(assess + "--lines out.jsonl --anew -o out.csv --overwrite " + closing, folder.path());
        EXPECT_EQ(ended.status, is_output_gone(closing) ? 3 : 1) << closing << ended.err;
        for (const std::string ending : {".jsonl", ".csv"})
            EXPECT_EQ(text_of_file(folder / ("out" + ending)), text_of_file(folder / ("good" + ending)))
                << closing;
    }
}

TEST(closed_streams, are_said_where_they_were_to_be_read_or_written) {
    Folder folder;
    const Ended unread = shell("dartwright check - <&-", folder.path());
    EXPECT_EQ(unread.status, 3);
    EXPECT_NE((unread.out + unread.err).find("standard input"), std::string::npos) << unread.err;
    for (const char* command : {"check", "show", "draw"}) {
        const Ended unwritten =
            shell(std::string("dartwright ") + command + " '" + bodice + "' >&-", folder.path());
        EXPECT_EQ(unwritten.status, 3) << command;
        EXPECT_TRUE(says_one_line(unwritten, "standard output: the result cannot be written")) << command;
    }
}

}  // namespace
}  // namespace dartwright
