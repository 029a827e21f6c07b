#include "dartwright/files/json_tree.hpp"
#include "dartwright/words/quoted.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

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

/// A value and all that it holds, in the file's order.
std::vector<const JsonNode*> nodes_of(const JsonNode& node) {
    std::vector<const JsonNode*> nodes{&node};
    for (const JsonNode* child : node.children)
        for (const JsonNode* inner : nodes_of(*child)) nodes.push_back(inner);
    return nodes;
}

/// The same value by the JSON library; of two members of one key it keeps the last.
bool is_same(const JsonNode& node, const nlohmann::json& value) {
    switch (node.kind) {
        case Kind::null:
            return value.is_null();
        case Kind::boolean:
            return value.is_boolean() && value.get<bool>() == node.boolean;
        case Kind::number:
            return value.is_number() && value.get<double>() == node.number &&
                   std::signbit(value.get<double>()) == std::signbit(node.number) &&
                   value.is_number_float() == !node.text.empty();
        case Kind::text:
            return value.is_string() && value.get<std::string>() == node.text;
        case Kind::list:
            if (!value.is_array() || value.size() != node.children.size()) return false;
            for (std::size_t i = 0; i < value.size(); ++i)
                if (!is_same(*node.children[i], value[i])) return false;
            return true;
        case Kind::object:
            break;
    }
    if (!value.is_object() || value.size() != node.children.size()) return false;
    return std::all_of(node.children.begin(), node.children.end(), [&](const JsonNode* child) {
        const std::string key(child->key);
        return value.contains(key) && is_same(*child, value[key]);
    });
}

/// Of what JSON is made, and of what it is not: pieces joined at random, or put into a text that is right.
rc::Gen<std::string> anyPieceOfJson() {
    return rc::gen::element<std::string>(
        "{", "}", "[", "]", ",", ":", "\"", "\"a\"", "\"b\":", "\"\\n\\\\\\/\"", "\"\\u00e9\"",
        "\"\\ud83d\\ude00\"", "\"\\ud83d\"", "\"\\x\"", "\\", "é", "\t", "\n", " ", "\r", "\v", "\x01",
        "\x7f", "true", "false", "null", "tru", "True", "0", "-0", "-0.0", "00", "01", "-", "1.", ".5",
        "1.5e", "1e5", "1E+2", "1e-2", "1e-400", "1e400", "-1e999", "5e-324", "2.4703282292062328e-324",
        "0.1", "12345678901234567890", "18446744073709551615", "18446744073709551616", "9223372036854775807",
        "-9223372036854775808", "-9223372036854775809", "9007199254740993", "9007199254740993.0",
        "1.7976931348623157e308", "1.7976931348623158e308", "1.7976931348623159e308", "-0e0", "0e999",
        "2.2250738585072011e-308", "2.2250738585072014e-308", "4.9406564584124654e-324", "-1e-400",
        "1e-99999999999", "1e99999999999", "0.000000000000000000000000000000000000000000000000001e50",
        "179769313486231580793728971405303415079934132710037826936173778980444968292764750946649017977587",
        "3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803482534211",
        "\"\\udc00\"", "\"\\u0000\"", "\"\\b\\f\\r\\t\"", "\"\\", "\"\\u12\"", "[[[[[[[[", "]]]]]]]]",
        "{\"a\":", "0.30000000000000004", "123456.78901234567", "1e22", "1e23", "+1", "1,5", "0x10", "NaN",
        "Infinity", "//", "/* */", "\xEF\xBB\xBF", "[1,2]", "{\"a\":1}", "{\"a\":{\"a\":[]}}");
}

rc::Gen<std::string> anyDigits() {
    return rc::gen::map(
        rc::gen::nonEmpty(
            rc::gen::container<std::vector<char>>(rc::gen::elementOf(std::string("0123456789")))),
        [](const std::vector<char>& digits) { return std::string(digits.begin(), digits.end()); });
}

/// A list of numbers as JSON has them, whole ones and others.
rc::Gen<std::string> anyNumbers() {
    const auto joined = [](const std::vector<std::string>& numbers) {
        std::string text = "[0";
        for (const std::string& number : numbers) text += "," + number;
        return text + "]";
    };
    const auto number_of = [](bool is_negative, std::string whole, const std::string& part,
                              const std::string& power) {
        whole.erase(0, std::min(whole.find_first_not_of('0'), whole.size() - 1));
        return (is_negative ? "-" : "") + whole + part + power;
    };
    const auto anyPart =
        rc::gen::oneOf(rc::gen::just(std::string()),
                       rc::gen::map(anyDigits(), [](const auto& digits) { return "." + digits; }));
    const auto anyPower = rc::gen::oneOf(
        rc::gen::just(std::string()),
        rc::gen::map(rc::gen::inRange(-330, 310), [](int power) { return "e" + std::to_string(power); }));
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(rc::gen::apply(
                            number_of, rc::gen::arbitrary<bool>(), anyDigits(), anyPart, anyPower)),
                        joined);
}

rc::Gen<std::string> anyText() {
    const auto joined = [](const std::vector<std::string>& pieces) {
        std::string text;
        for (const std::string& piece : pieces) text += piece;
        return text;
    };
    const auto number_of = [](const std::vector<char>& signs) {
        return std::string(signs.begin(), signs.end());
    };
    const auto in_tunic = [](const std::string& piece, std::size_t at, std::size_t left_out) {
        std::string text = edited::tunic;
        at %= text.size();
        return text.replace(at, std::min(left_out % 4, text.size() - at), piece);
    };
    const auto anyPlace = rc::gen::inRange<std::size_t>(0, std::string_view(edited::tunic).size());
    return rc::gen::oneOf(
        anyNumbers(), rc::gen::map(rc::gen::container<std::vector<std::string>>(anyPieceOfJson()), joined),
        rc::gen::map(
            rc::gen::container<std::vector<char>>(rc::gen::elementOf(std::string("0123456789.eE+-"))),
            number_of),
        rc::gen::apply(in_tunic, anyPieceOfJson(), anyPlace, rc::gen::inRange<std::size_t>(0, 4)));
}

std::uint64_t bits_of(double number) {
    return std::bit_cast<std::uint64_t>(number);
}

bool is_same(const JsonNode& a, const JsonNode& b) {
    return a.kind == b.kind && a.boolean == b.boolean && bits_of(a.number) == bits_of(b.number) &&
           a.text == b.text && a.key == b.key && a.index == b.index && a.order == b.order &&
           std::equal(a.children.begin(), a.children.end(), b.children.begin(), b.children.end(),
                      [](const JsonNode* c, const JsonNode* d) { return is_same(*c, *d); });
}

bool is_same(const JsonTree& a, const JsonTree& b) {
    const auto is_same_problem = [](const PlacedProblem& p, const PlacedProblem& q) {
        return p.order == q.order && p.problem.pointer == q.problem.pointer &&
               p.problem.found == q.problem.found && p.problem.expected == q.problem.expected;
    };
    return a.values == b.values && (a.root == nullptr) == (b.root == nullptr) &&
           (!a.root || is_same(*a.root, *b.root)) &&
           std::equal(a.problems.begin(), a.problems.end(), b.problems.begin(), b.problems.end(),
                      is_same_problem);
}

// Every text goes through one of two libraries; a letter written by its number leads to the one with words.
// It must not be seen in the tree, nor in the problems, which one it was.
RC_GTEST_PROP(JsonTree, IsTheSameByEitherLibrary, ()) {
    const std::string text = *anyText();
    const std::size_t deep = *rc::gen::element<std::size_t>(0, 0, 0, 61, 62, 63);
    const std::string inside = std::string(deep, '[') + text + std::string(deep, ']') + "]";
    const std::string as_letter = "[\"a\"     ," + inside;
    const std::string as_number = "[\"\\u0061\"," + inside;
    RC_ASSERT(as_letter.size() == as_number.size());
    const JsonTree one = parsed(as_letter);
    RC_CLASSIFY(one.root != nullptr, "JSON");
    RC_ASSERT(is_same(one, parsed(as_number)));
}

// One library takes what the other takes, and sees the same in it.
RC_GTEST_PROP(JsonTree, IsWhatTheLibraryReads, ()) {
    const std::string text = *anyText();
    const nlohmann::json other = nlohmann::json::parse(text, nullptr, false);
    const JsonTree tree = parsed(text);
    const bool is_said_once =
        std::none_of(tree.problems.begin(), tree.problems.end(),
                     [](const PlacedProblem& p) { return p.problem.expected == "each key once"; });
    RC_PRE(is_said_once);
    const bool has_number_beyond = tree.root && other.is_discarded();  // a stand-in is read for it
    RC_CLASSIFY(tree.root != nullptr && !has_number_beyond, "JSON");
    if (has_number_beyond) {
        const auto nodes = nodes_of(*tree.root);
        RC_ASSERT(std::any_of(nodes.begin(), nodes.end(), [](const JsonNode* node) {
            return node->kind == Kind::number && std::abs(node->number) == 1e300;
        }));
        return;
    }
    RC_ASSERT((tree.root == nullptr) == other.is_discarded());
    RC_ASSERT((tree.root == nullptr) == !tree.problems.empty());
    if (tree.root) RC_ASSERT(is_same(*tree.root, other));
}

TEST(JsonTree, PointerOfEveryValueLeadsToItByAnotherParser) {
    const JsonTree tree = parsed(edited::tunic);
    const auto other = edited::tunic_json();
    ASSERT_NE(tree.root, nullptr);
    EXPECT_GT(tree.values, 200U);
    const std::vector<const JsonNode*> nodes = nodes_of(*tree.root);
    EXPECT_EQ(nodes.size(), tree.values);
    for (const JsonNode* each : nodes) {
        const JsonNode& node = *each;
        EXPECT_EQ(nodes[node.order], &node);
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
        {"half a pair",
         "[\"\\udc00\"]",
         {"/0", "invalid string: surrogate U+DC00..U+DFFF must follow U+D800..U+DBFF at line 1, column 8",
          "a value"}},
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
