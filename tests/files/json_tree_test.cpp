#include "dartwright/files/json_tree.hpp"

#include <gtest/gtest.h>

#include <string>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

JsonTree parsed(std::string_view text) {
    return parse_json(text, "a pattern file");
}

using Kind = JsonNode::Kind;

/// The only problem of a text that is not JSON.
FileProblem problem_of(const std::string& text) {
    const JsonTree tree = parsed(text);
    EXPECT_EQ(tree.root, nullptr) << text;
    EXPECT_EQ(tree.problems.size(), 1U) << text;
    return tree.problems.empty() ? FileProblem{} : tree.problems[0].problem;
}

TEST(JsonTree, KeepsKindsValuesAndTheFilesOrder) {
    const JsonTree tree = parsed(R"({"z": [1, -2.50, true, null], "a": {"x": "é"}})");
    ASSERT_NE(tree.root, nullptr);
    EXPECT_TRUE(tree.problems.empty());
    ASSERT_EQ(tree.root->children.size(), 2U);
    const JsonNode& list = *tree.root->children[0];
    EXPECT_EQ(list.key, "z");
    ASSERT_EQ(list.children.size(), 4U);
    EXPECT_EQ(list.children[0]->number, 1);
    EXPECT_EQ(list.children[1]->number, -2.5);
    EXPECT_EQ(list.children[1]->text, "-2.50");
    EXPECT_TRUE(list.children[2]->boolean);
    EXPECT_EQ(list.children[3]->kind, Kind::null);
    const JsonNode* object = member(*tree.root, "a");
    ASSERT_NE(object, nullptr);
    EXPECT_EQ(member(*object, "x")->text, "é");
    EXPECT_EQ(member(*object, "y"), nullptr);
    EXPECT_LT(list.children[3]->order, object->order);
}

TEST(JsonTree, PointersAreEscaped) {
    const JsonTree tree = parsed(R"({"a/b": [{"m~n": 1, "": 2}]})");
    ASSERT_NE(tree.root, nullptr);
    EXPECT_EQ(pointer_to(*tree.root), "");
    const JsonNode& object = *tree.root->children[0]->children[0];
    EXPECT_EQ(pointer_to(object), "/a~1b/0");
    EXPECT_EQ(pointer_to(*object.children[0]), "/a~1b/0/m~0n");
    EXPECT_EQ(pointer_to(*object.children[1]), "/a~1b/0/");
}

TEST(JsonTree, PointerOfEveryValueLeadsToItByAnotherParser) {
    const JsonTree tree = parsed(edited::tunic);
    const auto other = edited::tunic_json();
    ASSERT_NE(tree.root, nullptr);
    EXPECT_GT(tree.nodes.size(), 200U);
    for (const JsonNode& node : tree.nodes) {
        const auto& value = other.at(nlohmann::ordered_json::json_pointer(pointer_to(node)));
        const bool is_group = node.kind == Kind::list || node.kind == Kind::object;
        const bool is_same = node.kind == Kind::number ? value.get<double>() == node.number
                             : node.kind == Kind::text ? value.get<std::string>() == node.text
                             : is_group                ? value.size() == node.children.size()
                                                       : value.is_boolean();
        EXPECT_TRUE(is_same) << pointer_to(node);
    }
}

TEST(JsonTree, ValuesInWords) {
    const JsonTree tree = parsed(R"([null, true, 3, 0.10, "a\nb", [], [1], {}, {"a": 1}])");
    ASSERT_NE(tree.root, nullptr);
    const char* const words[] = {"null",      "true",          "3",           "0.10",
                                 "\"a\\nb\"", "an empty list", "a list of 1", "an empty object",
                                 "an object"};
    ASSERT_EQ(tree.root->children.size(), std::size(words));
    for (std::size_t i = 0; i < std::size(words); ++i) EXPECT_EQ(in_words(*tree.root->children[i]), words[i]);
}

TEST(JsonTree, LongTextIsCutBetweenCharacters) {
    std::string text(59, 'a');
    for (int i = 0; i < 20; ++i) text += "é";
    const auto quotes = [](std::string inside) { return inside.insert(0, 1, '"').append(1, '"'); };
    EXPECT_EQ(in_quotes(text), quotes(std::string(59, 'a') + "..."));
    EXPECT_EQ(in_quotes(std::string(60, 'b')), quotes(std::string(60, 'b')));
}

struct Broken {
    const char* what;
    std::string text;
    FileProblem problem;
};

TEST(JsonTree, PathIsShownWholeInOneLine) {
    const std::string folder(200, 'f');
    EXPECT_EQ(path_in_quotes(folder + "/block.json"), '"' + folder + "/block.json\"");
    EXPECT_EQ(path_in_quotes("two\nlines \"a\".json"), "\"two\\nlines \\\"a\\\".json\"");
}

TEST(JsonTree, TextThatIsNotJsonSaysWhatStandsWhere) {
    const Broken cases[] = {
        {"empty", "", {"", "an empty file", "a pattern file"}},
        {"blank", " \n\t\r\n", {"", "a file of blanks only", "a pattern file"}},
        {"cut short in a list",
         "{\"a\": [1,\n  2",
         {"/a/2", "the end of the file at line 2, column 4", "a closing ']'"}},
        {"cut short in an object",
         "{\"a\": 1",
         {"", "the end of the file at line 1, column 8", "a closing '}'"}},
        {"cut short after a comma", "[1,", {"/1", "the end of the file at line 1, column 4", "a value"}},
        {"cut short in a text",
         "{\"a\": \"b",
         {"/a", "the end of the file at line 1, column 9", "a closing quote"}},
        {"trailing", "{}\n x", {"", "\"x\" at line 2, column 2", "the end of the file"}},
        {"trailing bracket", "[]]", {"", "']' at line 1, column 3", "the end of the file"}},
        {"not a number", "[NaN]", {"/0", "\"NaN\" at line 1, column 2", "a value"}},
        {"infinity", "[Infinity]", {"/0", "\"Infinity\" at line 1, column 2", "a value"}},
        {"minus infinity", "[-Infinity]", {"/0", "\"-Infinity\" at line 1, column 2", "digit after '-'"}},
        {"no digit first", "[.5]", {"/0", "\".5\" at line 1, column 2", "a digit before the point"}},
        {"zeros first", "[012]", {"/1", "\"012\" at line 1, column 2", "a number without a 0 before it"}},
        {"missing comma", "[1 2]", {"/1", "\"2\" at line 1, column 4", "',' or ']' before it"}},
        {"comma last",
         "{\"a\": 1,}",
         {"", "'}' at line 1, column 9", "a key in double quotes, or no comma before it"}},
        {"single quotes", "{'a': 1}", {"", "\"'\" at line 1, column 2", "a key in double quotes"}},
        {"comment", "{/* a */}", {"", "\"/\" at line 1, column 2", "a key in double quotes"}},
        {"wrong bracket", "[1}", {"/1", "'}' at line 1, column 3", "',' or ']' before it"}},
        {"Latin-1", "{\"n\": \"\xE9\"}", {"", "bytes that are not UTF-8 at line 1, column 8", "UTF-8 text"}},
        {"UTF-16", std::string("\xFF\xFE{\0}\0", 6), {"", "UTF-16 text", "a pattern file saved as UTF-8"}},
        {"zero byte", std::string("{}\0x", 4), {"", "a zero byte at line 1, column 3", "JSON"}},
    };
    for (const Broken& c : cases) {
        SCOPED_TRACE(c.what);
        const FileProblem problem = problem_of(c.text);
        EXPECT_EQ(problem.pointer, c.problem.pointer);
        EXPECT_EQ(problem.found, c.problem.found);
        EXPECT_EQ(problem.expected, c.problem.expected);
    }
}

TEST(JsonTree, EveryTruncationOfAFileIsRefused) {
    const std::string whole = edited::tunic;
    const std::size_t last = whole.find_last_of('}');
    for (std::size_t size = 0; size <= last; ++size) {
        const JsonTree tree = parsed(whole.substr(0, size));
        ASSERT_EQ(tree.root, nullptr) << size;
        ASSERT_EQ(tree.problems.size(), 1U) << size;
    }
}

TEST(JsonTree, AByteOrderMarkIsSkipped) {
    const JsonTree tree = parsed("\xEF\xBB\xBF{\"a\": 1}");
    ASSERT_NE(tree.root, nullptr);
    EXPECT_EQ(tree.root->children[0]->key, "a");
}

TEST(JsonTree, NestingIsLimited) {
    const auto nested = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    EXPECT_NE(parsed(nested(deepest_nesting)).root, nullptr);
    EXPECT_EQ(problem_of(nested(deepest_nesting + 1)).found, "brackets nested over 64 deep");
    EXPECT_EQ(problem_of(std::string(200'000, '[')).found, "brackets nested over 64 deep");
    std::string objects;
    for (int i = 0; i < 100'000; ++i) objects += "{\"a\":";
    EXPECT_EQ(problem_of(objects).found, "brackets nested over 64 deep");
}

TEST(JsonTree, KeysGivenTwiceAreAllReported) {
    const JsonTree tree = parsed(R"({"a": 1, "b": {"c": 1, "c": 2, "c": 3}, "a": 2})");
    ASSERT_NE(tree.root, nullptr);
    ASSERT_EQ(tree.problems.size(), 3U);
    EXPECT_EQ(tree.problems[0].problem.pointer, "/b/c");
    EXPECT_EQ(tree.problems[1].problem.pointer, "/b/c");
    EXPECT_EQ(tree.problems[2].problem.pointer, "/a");
    EXPECT_EQ(tree.problems[2].problem.found, "the key \"a\" again");
    EXPECT_EQ(member(*tree.root, "a")->number, 1);
}

TEST(JsonTree, ManyKeysGivenTwiceTakeNoTime) {
    std::string text = "{\"a\": 0";
    for (int i = 0; i < 100'000; ++i) text += ",\"a\":0";
    EXPECT_EQ(parsed(text + "}").problems.size(), 100'000U);
}

// A number too large for a double is a number nevertheless: the rest of the file is read too.
TEST(JsonTree, NumbersTooLargeKeepTheirDigitsForTheMessage) {
    const JsonTree tree = parsed("{\"a\": [1e999, -1e400, 7], \"b\": 1" + std::string(400, '0') + "}");
    ASSERT_NE(tree.root, nullptr);
    EXPECT_TRUE(tree.problems.empty());
    const JsonNode& list = *tree.root->children[0];
    EXPECT_EQ(list.children[0]->number, 1e300);
    EXPECT_EQ(in_words(*list.children[0]), "1e999");
    EXPECT_EQ(list.children[1]->number, -1e300);
    EXPECT_EQ(in_words(*list.children[1]), "-1e400");
    EXPECT_EQ(list.children[2]->number, 7);
    EXPECT_EQ(tree.root->children[1]->number, 1e300);
}

TEST(JsonTree, AFileOfNumbersTooLargeIsGivenUp) {
    std::string text = "[1e999";
    for (int i = 0; i < 1000; ++i) text += ",1e999";
    const FileProblem problem = problem_of(text + "]");
    EXPECT_EQ(problem.pointer, "/50");
}

}  // namespace
}  // namespace dartwright
