#include "dartwright/files/syntax_problem.hpp"

#include <gtest/gtest.h>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

/// A slip of someone who types a pattern: a stretch of this text replaced, and the one problem it makes.
const char* const typed = R"({
  "name": "skirt",
  "allowance": {"hem": 4, "side": 1.5},
  "items": [
    {"edge": "hem", "to": [23, 0]},
    {"edge": "side", "to": [21.6, 54]}
  ]
})";
struct Slip {
    const char* right;
    const char* wrong;
    const char* found;
    const char* expected;
};

TEST(SyntaxProblem, SlipsOfTypingSayWhatToTypeInstead) {
    const Slip slips[] = {
        {"0]},\n", "0]}\n", "'{' at line 6, column 5", "',' or ']' before it"},
        {"\"skirt\",", "\"skirt\"", "\"allowance\" at line 3, column 3", "',' or '}' before it"},
        {"\"skirt\",", "\"a \\\"b\\\"\" \"c\\\"d\"", "\"c\\\\\\\"d\" at line 2, column 21",
         "',' or '}' before it"},
        {"54]}", "54]},", "']' at line 7, column 3", "a value, or no comma before it"},
        {"1.5}", "1.5,}", "'}' at line 3, column 39", "a key in double quotes, or no comma before it"},
        {"1.5}", "1,5}", "\"5\" at line 3, column 37",
         "a key in double quotes; a decimal is written with a point, as 1.5"},
        {"1.5}", "1 1/2}", "\"1\" at line 3, column 37", "',' or '}' before it"},
        {"21.6", ".6", "\".6\" at line 6, column 29", "a digit before the point"},
        {"21.6", "-.6", "\"-.6\" at line 6, column 29", "a digit before the point"},
        {"21.6", "21.", "\"21.\" at line 6, column 29", "digit after '.'"},
        {"21.6", "021.6", "\"021.6\" at line 6, column 29", "a number without a 0 before it"},
        {"4, ", "4cm, ", "\"4cm\" at line 3, column 24",
         "a number without its unit, which the file says once"},
        {"4, ", "4 in, ", "\"in\" at line 3, column 26", "',' or '}' before it"},
        {"\"edge\": \"hem", "“edge”: \"hem", "\"“\" at line 5, column 6", "straight double quotes (\")"},
        {"\"skirt\"", "‘skirt’", "\"‘\" at line 2, column 11", "straight double quotes (\")"},
        {"\"skirt\"", "'skirt'", "\"'\" at line 2, column 11", "a value"},
        {"\"hem\", ", "\"hem, ", "\"to\" at line 5, column 21", "',' or '}' before it"},
        {"\"items\": [", "// items\n [", "\"/\" at line 4, column 3", "a key in double quotes"},
        {"  ]\n", "", "'}' at line 7, column 1", "',' or ']' before it"},
        {"  ]\n}", "  ]\n", "the end of the file at line 8, column 1", "a closing '}'"},
    };
    for (const Slip& slip : slips) {
        SCOPED_TRACE(slip.wrong);
        std::string text = typed;
        const auto at = text.find(slip.right);
        ASSERT_NE(at, text.npos);
        text.replace(at, std::string(slip.right).size(), slip.wrong);
        const auto problems = edited::problems_of(text);
        ASSERT_EQ(problems.size(), 1U) << ::testing::PrintToString(problems);
        EXPECT_EQ(problems[0].found, slip.found);
        EXPECT_EQ(problems[0].expected, slip.expected);
    }
}

TEST(SyntaxProblem, NothingBeforeTheSlipIsNeeded) {
    for (const char* text : {"\"a\" \"b\"", "]", "}", ",", "\"", "-", ".", "x", "\xE2\x80\x9C", ":", "1,5"}) {
        const auto problems = edited::problems_of(text);
        ASSERT_EQ(problems.size(), 1U) << text;
        EXPECT_FALSE(problems[0].found.empty()) << text;
        EXPECT_NE(problems[0].found.find("at line 1, column "), std::string::npos) << problems[0].found;
    }
}

}  // namespace
}  // namespace dartwright
