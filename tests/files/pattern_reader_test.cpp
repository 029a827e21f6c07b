#include <gtest/gtest.h>

#include "dartwright/files/pattern_file.hpp"
#include "edited_pattern.hpp"

namespace dartwright {
namespace {

using edited::problems_of;
using edited::with;

TEST(PatternReader, ReadsTheWhole) {
    const Pattern pattern = read_pattern(edited::tunic, "tunic");
    EXPECT_EQ(pattern.name, "page's tunic");
    EXPECT_EQ(pattern.unit, Unit::cm);
    EXPECT_EQ(pattern.pieces.size(), 4U);
    EXPECT_EQ(pattern.tolerances, (std::map<std::string, double>{{"corner", 3}, {"seam", 1}}));
    ASSERT_EQ(pattern.made.size(), 1U);
    EXPECT_EQ(pattern.made[0], (Made{"pivot", {{"piece", "front"}, {"to", "side@60/armhole"}}}));
    EXPECT_TRUE(pattern.as_written.empty());
}

TEST(PatternReader, EachFaultIsOneProblem) {
    const edited::Edit edits[] = {
        {"/dartwright", "2", {"/dartwright", "2", "1, the version of the format"}},
        {"/dartwright", "\"1\"", {"/dartwright", "\"1\"", "1, the version of the format"}},
        {"/dartwright", "", {"", "no key \"dartwright\"", "the version of the format: 1"}},
        {"/name", "", {"", "no key \"name\"", "the pattern's name"}},
        {"/unit", "", {"", "no key \"unit\"", "the unit of every length: \"mm\", \"cm\" or \"in\""}},
        {"/unit", "\"inch\"", {"/unit", "\"inch\"", "\"mm\", \"cm\" or \"in\""}},
        {"/unit", "10", {"/unit", "10", "\"mm\", \"cm\" or \"in\""}},
        {"/piece", "[]", {"/piece", "the unknown key \"piece\"", "\"pieces\""}},
        {"/tolerances/seems", "1", {"/tolerances/seems", "the unknown key \"seems\"", "\"seam\""}},
        {"/tolerances/seam", "-1", {"/tolerances/seam", "-1", "a length that is not negative"}},
        {"/tolerances/corner", "200", {"/tolerances/corner", "200", "an angle from 0 to 180 degrees"}},
        {"/tolerances/corner", "\"2\"", {"/tolerances/corner", "\"2\"", "an angle from 0 to 180 degrees"}},
        {"/tolerances", "[]", {"/tolerances", "an empty list", "the tolerances as an object in braces"}},
        {"/made", "{}", {"/made", "an empty object", "a list of operations"}},
        {"/made/0", "\"pivot\"", {"/made/0", "\"pivot\"", "an operation as an object in braces"}},
        {"/made/0/operation", "", {"/made/0", "no key \"operation\"", "the operation's name"}},
        {"/made/0/operation", "\"\"", {"/made/0/operation", "\"\"", "a name that is not empty"}},
        {"/made/0/share", "0.5", {"/made/0/share", "0.5", "text in double quotes"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
}

TEST(PatternReader, PiecesAreNeededAndHaveNamesOfTheirOwn) {
    const auto problem_with = [](const std::string& pieces) {
        const auto problems =
            problems_of(R"({"dartwright": 1, "name": "n", "unit": "mm", "pieces": )" + pieces + "}");
        EXPECT_EQ(problems.size(), 1U) << pieces;
        return problems.empty() ? FileProblem{} : problems[0];
    };
    EXPECT_EQ(problem_with("[]").expected, "one piece or more");
    EXPECT_EQ(problem_with("{}").expected, "a list of pieces");
    const std::string piece =
        R"({"name": "a", "outline": {"start": [0, 0], "items": [{"edge": "e", "to": [0, 0]}]}})";
    const FileProblem twice = problem_with("[" + piece + "," + piece + "]");
    EXPECT_EQ(twice.pointer, "/pieces/1/name");
    EXPECT_EQ(twice.found, "the piece \"a\" again");
    const auto none = problems_of(R"({"dartwright": 1, "name": "n", "unit": "mm"})");
    ASSERT_EQ(none.size(), 1U);
    EXPECT_EQ(none[0].found, "no key \"pieces\"");
}

TEST(PatternReader, TheRootIsAnObject) {
    for (const char* text : {"[]", "1", "null", "\"pattern\""}) {
        const auto problems = problems_of(text);
        ASSERT_EQ(problems.size(), 1U) << text;
        EXPECT_EQ(problems[0].pointer, "");
        EXPECT_EQ(problems[0].expected, "a pattern as an object in braces");
    }
}

TEST(PatternReader, KeysGivenTwiceAreProblems) {
    std::string text = edited::tunic;
    text.replace(text.find("\"unit\": \"cm\""), 12, "\"unit\": \"cm\", \"name\": \"other\"");
    const auto problems = problems_of(text);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].pointer, "/name");
    EXPECT_EQ(problems[0].found, "the key \"name\" again");
}

// All problems in one go, in the file's order, whatever kind they are.
TEST(PatternReader, AllProblemsAreReportedTogetherInTheFilesOrder) {
    auto whole = edited::tunic_json();
    whole["unti"] = "cm";
    whole["pieces"][0]["cut"]["quantity"] = -1;
    whole["pieces"][0]["outline"]["items"][0]["to"] = {1, "2"};
    whole["pieces"][0]["notches"][0]["edge"] = "sleeve";
    whole["pieces"][2]["name"] = "front";
    whole["seams"][2]["joins"][0]["piece"] = "sleeve";
    whole["tolerances"]["seam"] = 99999;
    std::string text = whole.dump();
    text.replace(text.find("99999"), 5, "1e999");
    const char* const pointers[] = {"/pieces/0/cut/quantity",   "/pieces/0/outline/items/0/to/1",
                                    "/pieces/0/notches/0/edge", "/pieces/2/name",
                                    "/seams/1/joins/1/piece",   "/seams/2/joins/0/piece",
                                    "/tolerances/seam",         "/unti"};
    const auto problems = problems_of(text);
    ASSERT_EQ(problems.size(), std::size(pointers)) << ::testing::PrintToString(problems);
    for (std::size_t i = 0; i < std::size(pointers); ++i) EXPECT_EQ(problems[i].pointer, pointers[i]);
    EXPECT_EQ(problems[6].found, "1e999");
}

TEST(PatternReader, TheMessageHasOneLineAProblem) {
    const std::string text = R"({"dartwright": 1, "name": "", "unit": "m", "pieces": 3})";
    try {
        read_pattern(text, "tunics/page.json");
        FAIL() << "was read";
    } catch (const InvalidPattern& invalid) {
        EXPECT_EQ(invalid.file, "tunics/page.json");
        EXPECT_STREQ(invalid.what(),
                     "tunics/page.json: /name: found \"\"; expected a name that is not empty\n"
                     "tunics/page.json: /unit: found \"m\"; expected \"mm\", \"cm\" or \"in\"\n"
                     "tunics/page.json: /pieces: found 3; expected a list of pieces");
    }
    try {
        read_pattern("", "empty.json");
        FAIL() << "was read";
    } catch (const InvalidPattern& invalid) {
        EXPECT_STREQ(invalid.what(), "empty.json: found an empty file; expected a pattern file");
    }
}

// Every value of the file replaced in turn by one of each kind: it reads or it is a problem at or above that
// value, and never anything else.
TEST(PatternReader, AnyValueMayBeOfAnyKind) {
    const auto flat = edited::tunic_json().flatten();
    std::size_t refused = 0;
    for (const auto& leaf : flat.items()) {
        for (const char* value :
             {"null", "true", "-3", "0.5", "1e300", "\"\"", "\"neck\"", "[]", "{}", "[[1, 2], [3, 4]]"}) {
            const auto problems = problems_of(with(leaf.key(), value));
            refused += problems.empty() ? 0 : 1;
            for (const FileProblem& p : problems)
                EXPECT_FALSE(p.found.empty() || p.expected.empty()) << leaf.key();
        }
    }
    EXPECT_GT(refused, flat.size() * 7);
}

}  // namespace
}  // namespace dartwright
