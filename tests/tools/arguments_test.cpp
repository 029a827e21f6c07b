// How the program is called: help, version, wrong words.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::vector<std::string> commands{"check", "walk",  "show",  "measure", "pivot", "split",  "cluster",
                                        "merge", "close", "true",  "repoint", "open",  "replay", "compare",
                                        "cut",   "draw",  "print", "lay",     "sheet", "assess"};

TEST(help, lists_every_command) {
    const Ended ended = dartwright({"--help"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.err, "");
    std::size_t at = ended.out.find("Commands:");
    for (const std::string& command : commands) {
        at = ended.out.find("\n  " + command + " ", at);
        ASSERT_NE(at, std::string::npos) << command;
    }
    EXPECT_EQ(dartwright({"-h"}).out, ended.out);
}

TEST(help, of_each_command_has_usage_options_and_examples) {
    for (const std::string& command : commands) {
        const Ended ended = dartwright({command, "--help"});
        EXPECT_EQ(ended.status, 0) << command;
        for (const char* part : {"Usage:\n  dartwright ", "\nOptions:\n", "\nExamples:\n  dartwright "})
            EXPECT_NE(ended.out.find(part), std::string::npos) << command << part;
        // Help lines fit a terminal of 80 columns, examples apart.
        const std::string before = ended.out.substr(0, ended.out.find("\nExamples:"));
        std::istringstream lines(before);
        std::string line;
        std::getline(lines, line);
        while (std::getline(lines, line)) EXPECT_LE(line.size(), 80u) << command << ": " << line;
    }
}

TEST(version, is_one_line) {
    const Ended ended = dartwright({"--version"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.out.find("dartwright "), 0u);
    EXPECT_EQ(lines_in(ended.out), 1u);
}

TEST(help, is_a_command_as_well_as_an_option) {
    EXPECT_EQ(dartwright({"help"}).out, dartwright({"--help"}).out);
    EXPECT_EQ(dartwright({"help", "help"}).out, dartwright({"--help"}).out);
    const Ended ended = dartwright({"help", "pivot"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.out.find("dartwright pivot: "), 0u);
    EXPECT_EQ(ended.out, dartwright({"pivot", "--help"}).out);
}

struct Wrong {
    std::vector<std::string> words;
    const char* says;
};
void PrintTo(const Wrong& wrong, std::ostream* out) {
    *out << wrong.says;
}
class wrong_words : public testing::TestWithParam<Wrong> {};

TEST_P(wrong_words, are_said_in_one_line_with_status_2) {
    const Ended ended = dartwright(GetParam().words);
    EXPECT_EQ(ended.status, 2);
    EXPECT_TRUE(says_one_line(ended, GetParam().says));
    EXPECT_EQ(ended.out, "");
}

INSTANTIATE_TEST_SUITE_P(
    all, wrong_words,
    testing::Values(
        Wrong{{}, "no command is given"}, Wrong{{"chek"}, "the nearest is check"},
        Wrong{{"comp"}, "the nearest is compare"},
        Wrong{{"bodice"}, "there is no command 'bodice'; 'dartwright help' lists them"},
        Wrong{{"help", "bodice"}, "'dartwright help' lists them"},
        Wrong{{"help", "pivto"}, "the nearest is pivot"},
        Wrong{{"help", "pivot", "cut"}, "'cut' is one word too many"},
        Wrong{{"check", bodice, "--colour", "red"}, "'dartwright check --help' lists them"},
        Wrong{{"--frob"}, "there is no option --frob"}, Wrong{{""}, "there is no command"},
        Wrong{{"check"}, "a file or folder to check is missing"},
        Wrong{{"check", bodice, "--fromat", "json"}, "the nearest is --format"},
        Wrong{{"check", bodice, "--format"}, "--format"},
        Wrong{{"check", bodice, "--format", "xml"}, "text or json"},
        Wrong{{"check", bodice, "--format", "json", "--format", "text"}, "--format"},
        Wrong{{"show"}, "the pattern file is missing"}, Wrong{{"show", bodice, bodice}, "one word too many"},
        Wrong{{"walk", bodice}, "--seam is missing"},
        Wrong{{"draw", "-", "-"}, "standard input (-) can be read once only"},
        Wrong{{"pivot", bodice, "--dart", "waist dart", "--to", "side@50%"}, "--piece is missing"},
        Wrong{{"pivot", bodice, "--piece"}, "--piece"}, Wrong{{"assess"}, "the exercise file is missing"},
        Wrong{{"assess", exercise}, "a draft, or a folder of drafts, is missing"},
        Wrong{{"assess", exercise, "--merge"}, "a file of lines is missing"},
        Wrong{{"assess", exercise, bodice, "--format", "htm"}, "the nearest is html"},
        Wrong{{"assess", exercise, bodice, "--jobs", "0"}, "--jobs is a whole number from 1"},
        Wrong{{"assess", exercise, bodice, "--jobs", "2x"}, "not '2x'"},
        Wrong{{"assess", exercise, bodice, "--resume"}, "--lines, which is missing"},
        Wrong{{"assess", exercise, bodice, "--merge", "--lines", "l.jsonl"}, "writes none"},
        Wrong{{"assess", "-", "-"}, "standard input (-) can be read once only"},
        Wrong{{"pivot", bodice, "--piece", "front", "--dart", "waist dart", "--to", "side@50%", "--name",
               "side \xff"},
              "--name is not UTF-8 text: byte 6"},
        Wrong{{"show", bodice, "--format", "\xc3"}, "--format is not UTF-8 text"}));

TEST(words, may_come_in_any_order_and_with_equals_signs) {
    const std::string expected =
        dartwright({"pivot", bodice, "--piece", "front", "--dart", "waist dart", "--to", "shoulder@50%"}).out;
    EXPECT_FALSE(expected.empty());
    EXPECT_EQ(dartwright({"pivot", "--to=shoulder@50%", "--dart=waist dart", "--piece=front", bodice}).out,
              expected);
}

TEST(words, that_begin_with_a_dash_are_values_where_one_is_wanted) {
    const Ended ended = dartwright({"pivot", bodice, "--piece", "front", "--dart", "waist dart", "--to",
                                    "shoulder@50%", "--angle", "-8"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_TRUE(says_one_line(ended, "expected more than 0"));
}

TEST(names, may_hold_the_signs_of_places_and_any_script) {
    std::string text = text_of_file(bodice);
    for (std::size_t at = 0; (at = text.find("\"shoulder\"", at)) != std::string::npos;)
        text.replace(at, 10, "\"épaule@1/2=ü\"");
    const Ended ended = dartwright({"pivot", "-", "--piece", "front", "--dart", "waist dart", "--to",
                                    "épaule@1/2=ü@50%", "--share", "1/2"},
                                   text);
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_NE(ended.out.find("épaule@1/2=ü dart"), std::string::npos);
    EXPECT_EQ(dartwright({"check", "-"}, ended.out).status, 0);
    const Ended split = dartwright(
        {"split", "-", "--piece", "front", "--dart", "waist dart", "--to", "épaule@1/2=ü@50%=50%"}, text);
    EXPECT_EQ(split.status, 0) << split.err;
}

}  // namespace
}  // namespace dartwright
