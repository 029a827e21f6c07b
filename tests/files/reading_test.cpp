#include "dartwright/files/reading.hpp"
#include "dartwright/words/lists.hpp"

#include <gtest/gtest.h>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

TEST(Reading, NearestNameIsASlipAway) {
    const std::vector<std::string> known{"edge", "to", "curve", "through", "fullness"};
    EXPECT_EQ(nearest_name("edgge", known), "edge");
    EXPECT_EQ(nearest_name("egde", known), "edge");
    EXPECT_EQ(nearest_name("curv", known), "curve");
    EXPECT_EQ(nearest_name("throuhg", known), "through");
    EXPECT_EQ(nearest_name("t", known), "to");
    EXPECT_EQ(nearest_name("fulness", known), "fullness");
    EXPECT_EQ(nearest_name("colour", known), std::nullopt);
    EXPECT_EQ(nearest_name("", known), std::nullopt);
    EXPECT_EQ(nearest_name(std::string(100'000, 'e'), known), std::nullopt);
}

TEST(Reading, ListsOfNamesAreCut) {
    EXPECT_EQ(any_of({}), "");
    EXPECT_EQ(any_of({"a"}), "\"a\"");
    EXPECT_EQ(any_of({"a", "b"}), "\"a\" or \"b\"");
    EXPECT_EQ(any_of({"a", "b", "c"}), "\"a\", \"b\" or \"c\"");
    const std::string cut = any_of(std::vector<std::string>(25, "x"));
    EXPECT_EQ(cut.substr(cut.size() - 14), "\"x\" and 5 more");
}

// Lengths, points, names, flags and whole numbers, wherever they stand, are read in one way each.
TEST(Reading, ValuesOfTheWrongKindOrSize) {
    const std::string at = "/pieces/0/notches/0/at";
    const std::string to = "/pieces/1/outline/items/1/to";
    const std::string line = "/pieces/0/marks/0/line";
    const edited::Edit edits[] = {
        {"/pieces/0/notches/0/at", "\"7\"", {at, "\"7\"", "a length as a number"}},
        {"/pieces/0/notches/0/at", "null", {at, "null", "a length as a number"}},
        {"/pieces/0/notches/0/at", "-0.1", {at, "-0.1", "a length that is not negative"}},
        {"/pieces/0/notches/0/at", "1000.01", {at, "1000.01", "at most 10 m, which is 1000 cm"}},
        {"/pieces/0/notches/0/at", "1e300", {at, "1e+300", "at most 10 m, which is 1000 cm"}},
        {"/pieces/1/outline/items/1/to", "[22]", {to, "a list of 1", "a point [x, y]"}},
        {"/pieces/1/outline/items/1/to",
         "[22, 20, 3]",
         {to, "a list of 3", "a point [x, y] of two numbers (a decimal is written with a point, as 1.5)"}},
        {"/pieces/1/outline/items/1/to", "{}", {to, "an empty object", "a point [x, y]"}},
        {"/pieces/1/outline/items/1/to", "[22, true]", {to + "/1", "true", "a number"}},
        {"/pieces/1/outline/items/1/to",
         "[1000.5, 20]",
         {to + "/0", "1000.5", "at most 10 m, which is 1000 cm"}},
        {"/pieces/1/outline/items/1/to",
         "[22, -1001]",
         {to + "/1", "-1001", "at most 10 m from zero, which is 1000 cm"}},
        {"/pieces/0/marks/0/line", "[[0, 1]]", {line, "a list of 1", "two points or more"}},
        {"/name", "\"\"", {"/name", "\"\"", "a name that is not empty"}},
        {"/name", "12", {"/name", "12", "a name in double quotes"}},
        {"/name", "\"a\\nb\"", {"/name", "\"a\\nb\"", "a name without control characters"}},
        {"/name", "\"a\\u0000b\"", {"/name", "\"a\\u0000b\"", "a name without control characters"}},
        {"/name",
         "\"a\\u007fb\"",
         {"/name",
          "\"a\x7F"
          "b\"",
          "a name without control characters"}},
        {"/pieces/1/cut/same", "1", {"/pieces/1/cut/same", "1", "true or false"}},
        {"/pieces/1/cut/quantity", "0", {"/pieces/1/cut/quantity", "0", "a whole number from 1 to 10000"}},
        {"/pieces/1/cut/quantity",
         "1.5",
         {"/pieces/1/cut/quantity", "1.5", "a whole number from 1 to 10000"}},
        {"/pieces/1/cut/quantity",
         "1e20",
         {"/pieces/1/cut/quantity", "1e+20", "a whole number from 1 to 10000"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
}

TEST(Reading, LimitsThemselvesAreAllowed) {
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/0/marks/1/drill", "[1000, -1000]")).empty());
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/0/notches/0/at", "0")).empty());
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/0/notches/0/at", "1000")).empty());
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/1/cut/quantity", "10000")).empty());
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/1/cut/quantity", "3.0")).empty());
}

TEST(Reading, SizesAreJudgedInMillimetres) {
    const auto in_unit = [](const char* unit, const char* at) {
        auto whole = edited::tunic_json();
        whole["unit"] = unit;
        whole["pieces"][0]["notches"][0]["at"] = nlohmann::ordered_json::parse(at);
        return edited::problems_of(whole.dump()).size();
    };
    EXPECT_EQ(in_unit("mm", "10000"), 0U);
    EXPECT_EQ(in_unit("mm", "10000.1"), 1U);
    EXPECT_EQ(in_unit("cm", "1000"), 0U);
    EXPECT_EQ(in_unit("cm", "1000.1"), 1U);
    EXPECT_EQ(in_unit("in", "393.7"), 0U);
    EXPECT_EQ(in_unit("in", "393.71"), 1U);
}

// One slip is one problem: the key that it stands for is not reported as missing besides.
TEST(Reading, AMisspeltKeyIsNotMissingToo) {
    const auto renamed = [](const std::string& pointer, const char* key, const char* slip) {
        auto whole = edited::tunic_json();
        auto& object = whole[nlohmann::ordered_json::json_pointer(pointer)];
        object[slip] = object[key];
        object.erase(key);
        return edited::problems_of(whole.dump());
    };
    const std::tuple<const char*, const char*, const char*> slips[] = {
        {"/pieces/0", "outline", "outlines"},           {"/pieces/0/outline/items/1", "dart", "drat"},
        {"/pieces/0/outline/items/3", "edge", "egde"},  {"/pieces/0/outline/items/3", "edge", "Edge"},
        {"/pieces/0/outline/items/1", "point", "pont"}, {"/seams/0", "joins", "join"},
    };
    for (const auto& [pointer, key, slip] : slips) {
        const auto problems = renamed(pointer, key, slip);
        ASSERT_EQ(problems.size(), 1U) << slip << ::testing::PrintToString(problems);
        EXPECT_EQ(problems[0].pointer, std::string(pointer) + "/" + slip);
        EXPECT_EQ(problems[0].found, "the unknown key \"" + std::string(slip) + "\"");
        EXPECT_EQ(problems[0].expected, "\"" + std::string(key) + "\"");
    }
    // A key that is there and a slip of it are two things, and another missing key is still missed.
    auto whole = edited::tunic_json();
    whole["pieces"][0]["nmae"] = "front";
    whole["pieces"][0].erase("outline");
    EXPECT_GE(edited::problems_of(whole.dump()).size(), 2U);
}

std::string quoted_times(const std::string& letter, std::size_t count) {
    std::string text = "\"";
    for (std::size_t i = 0; i < count; ++i) text += letter;
    return text + "\"";
}

TEST(Reading, NamesHaveTwoHundredLettersOrFewer) {
    for (const std::string letter : {"a", "\u00e9", "\u4e2d", "\U0001F9F5"}) {
        EXPECT_TRUE(edited::problems_of(edited::with("/name", quoted_times(letter, 200))).empty()) << letter;
        const auto problems = edited::problems_of(edited::with("/name", quoted_times(letter, 201)));
        ASSERT_EQ(problems.size(), 1U) << letter;
        EXPECT_EQ(problems[0].pointer, "/name");
        EXPECT_EQ(problems[0].expected, "a name of 200 letters or fewer");
    }
}

/// The list with its last entry so many times.
std::string grown(const std::string& pointer, std::size_t count) {
    nlohmann::json list =
        nlohmann::json::parse(edited::with("/name", "\"x\""))[nlohmann::json::json_pointer(pointer)];
    while (list.size() < count) list.push_back(list.back());
    return edited::with(pointer, list.dump());
}

TEST(Reading, ListsHaveTenThousandEntriesOrFewer) {
    for (const std::string pointer : {"/pieces", "/seams", "/made", "/pieces/0/notches", "/pieces/0/marks",
                                      "/pieces/0/double_darts", "/pieces/0/outline/items"}) {
        const auto is_about_length = [&](const FileProblem& problem) {
            return problem.pointer == pointer && problem.expected == "at most 10000 in one list";
        };
        const auto enough = edited::problems_of(grown(pointer, 10'000));
        EXPECT_TRUE(std::none_of(enough.begin(), enough.end(), is_about_length)) << pointer;
        const auto problems = edited::problems_of(grown(pointer, 10'001));
        const auto found = std::find_if(problems.begin(), problems.end(), is_about_length);
        ASSERT_NE(found, problems.end()) << pointer;
        EXPECT_EQ(found->found, "a list of 10001") << pointer;
    }
    EXPECT_TRUE(edited::problems_of(grown("/pieces/0/notches", 10'000)).empty());
}

// Those beyond the first hundred are counted, and refuse the file as the others do.
TEST(Reading, TellsAHundredProblemsAndHowManyMore) {
    for (const std::size_t count : {1U, 99U, 100U, 101U, 5000U}) {
        std::string list = "[";
        for (std::size_t i = 0; i < count; ++i) list += i == 0 ? "0" : ", 0";
        try {
            read_pattern(edited::with("/pieces/0/notches", list + "]"), "file");
            FAIL() << "no problem of " << count;
        } catch (const InvalidPattern& invalid) {
            EXPECT_EQ(invalid.problems.size(), std::min<std::size_t>(count, 100));
            EXPECT_EQ(invalid.problems.size() + invalid.more, count);
            for (std::size_t i = 0; i < invalid.problems.size(); ++i)
                EXPECT_EQ(invalid.problems[i].pointer, "/pieces/0/notches/" + std::to_string(i));
            const std::string message = invalid.what();
            EXPECT_EQ(
                message.find("file: and " + std::to_string(invalid.more) + " more problem") != message.npos,
                count > 100);
        }
    }
}

}  // namespace
}  // namespace dartwright
