// Rule files: what is read, what is refused and in which words, and that writing keeps everything.

#include "dartwright/files/rule_file.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "files/edited_pattern.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

/// The rule of the tunic, as a file of its own.
nlohmann::ordered_json page_rule() {
    nlohmann::ordered_json rule = edited::tunic_json()["cutting"];
    rule["dartwright_rule"] = 1;
    return rule;
}

TEST(rule_file, is_read_in_its_own_unit) {
    nlohmann::ordered_json json = page_rule();
    json["unit"] = "cm";
    const CuttingRule rule = read_rule(json.dump(), "page.json");
    EXPECT_EQ(rule.name, "page");
    ASSERT_EQ(rule.allowance.edges.size(), 2u);
    EXPECT_EQ(rule.allowance.edges[0], (RuleWidth{"hem", "", 400}));
    EXPECT_EQ(rule.allowance.edges[1], (RuleWidth{"side", "front", 200}));
    EXPECT_EQ(rule.allowance.openings.at(0), (RuleWidth{"centre back", "", 250}));
    EXPECT_EQ(rule.allowance.seams.at(0), (RuleWidth{"neck", "", 70}));
    EXPECT_EQ(rule.allowance.joined_mm, 150);
    EXPECT_EQ(rule.allowance.elsewhere_mm, 100);
    ASSERT_EQ(rule.corners.size(), 2u);
    EXPECT_EQ(rule.corners[0],
              (CornerRule{{"side", "hem"}, "front", RuleCornerKind::mirrored, "hem", std::nullopt}));
    EXPECT_EQ(rule.corners[1], (CornerRule{{"neck", "brim"}, "", RuleCornerKind::blunted, "", 120}));
    EXPECT_EQ(rule.notches, (NotchRule{NotchForm::v, 50, 40}));
    EXPECT_EQ(rule.darts.is_notched, true);
    EXPECT_EQ(rule.darts.trim, (DartTrim{300, 150}));
}

TEST(rule_file, may_leave_out_all_but_its_name_and_unit) {
    const CuttingRule rule =
        read_rule(R"({"dartwright_rule": 1, "name": "bare", "unit": "in"})", "bare.json");
    EXPECT_FALSE(rule.allowance.joined_mm || rule.allowance.elsewhere_mm || rule.notches || rule.darts.trim);
    EXPECT_TRUE(rule.corners.empty());
}

struct Wrong {
    const char* pointer;
    const char* value;  ///< null: taken away
    FileProblem problem;
};

class wrong_rule : public ::testing::TestWithParam<Wrong> {};

TEST_P(wrong_rule, is_refused_in_clear_words) {
    const Wrong& wrong = GetParam();
    nlohmann::ordered_json json = page_rule();
    const nlohmann::ordered_json::json_pointer place(wrong.pointer);
    if (wrong.value)
        json[place] = nlohmann::ordered_json::parse(wrong.value);
    else
        json.at(place.parent_pointer()).erase(place.back());
    try {
        read_rule(json.dump(), "page.json");
        FAIL() << "was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_EQ(invalid.problems[0].pointer, wrong.problem.pointer);
        EXPECT_EQ(invalid.problems[0].found, wrong.problem.found);
        EXPECT_EQ(invalid.problems[0].expected, wrong.problem.expected);
    }
}

INSTANTIATE_TEST_SUITE_P(
    kinds, wrong_rule,
    ::testing::Values(
        Wrong{"/dartwright_rule", "2", {"/dartwright_rule", "2", "1, the version of the format"}},
        Wrong{"/name", nullptr, {"", "no key \"name\"", "the rule's name"}},
        Wrong{"/unit", "\"ell\"", {"/unit", "\"ell\"", "\"mm\", \"cm\" or \"in\""}},
        Wrong{"/allowence", "{}", {"/allowence", "the unknown key \"allowence\"", "\"allowance\""}},
        Wrong{"/allowance/joined", "-1", {"/allowance/joined", "-1", "a length that is not negative"}},
        Wrong{"/allowance/edges/0/width",
              "\"4cm\"",
              {"/allowance/edges/0/width", "\"4cm\"", "a length as a number"}},
        Wrong{"/allowance/edges/0/width",
              nullptr,
              {"/allowance/edges/0", "no key \"width\"", "the width of the allowance"}},
        Wrong{"/allowance/edges/1",
              R"({"edge": "hem", "width": 3})",
              {"/allowance/edges/1/edge", "the edge \"hem\" again", "one width for it"}},
        Wrong{"/corners/0/between",
              R"(["side"])",
              {"/corners/0/between", "a list of 1", "the names of two edges"}},
        Wrong{"/corners/1/between/1",
              "\"neck\"",
              {"/corners/1/between/1", "the same edge as the first, \"neck\"", "another edge"}},
        Wrong{"/corners/0/kind",
              "\"round\"",
              {"/corners/0/kind", "\"round\"",
               "\"met\", \"squared\", \"mirrored\", \"carried on\" or \"blunted\""}},
        Wrong{"/corners/0/whose",
              nullptr,
              {"/corners/0", "no key \"whose\"", "the one of the two edges of which the kind speaks"}},
        Wrong{"/corners/0/whose",
              "\"neck\"",
              {"/corners/0/whose", "\"neck\", which is not one of the two edges", "\"side\" or \"hem\""}},
        Wrong{"/corners/1/whose",
              "\"neck\"",
              {"/corners/1/whose", "\"whose\" with a kind that speaks of both edges", "no key \"whose\""}},
        Wrong{"/corners/0/limit",
              "5",
              {"/corners/0/limit", "\"limit\" with a kind that is not blunted", "no key \"limit\""}},
        Wrong{"/corners/1/limit", "0", {"/corners/1/limit", "0", "a length of more than 0"}},
        Wrong{"/notches/form", "\"U\"", {"/notches/form", "\"U\"", "\"slit\", \"V\", \"T\" or \"box\""}},
        Wrong{"/notches/form", "\"slit\"", {"/notches/width", "\"width\" of a slit", "no key \"width\""}},
        Wrong{"/notches/width", nullptr, {"/notches", "no key \"width\"", "how wide notches are cut"}},
        Wrong{"/darts/notched", "1", {"/darts/notched", "1", "true or false"}},
        Wrong{"/darts/trim/allowance",
              nullptr,
              {"/darts/trim", "no key \"allowance\"", "what is left outside each leg"}}));

TEST(rule_file, has_all_its_problems_said_at_once) {
    try {
        read_rule(R"({"dartwright_rule": 1, "unit": "cm", "allowance": {"joined": -1, "hem": 2},
                      "corners": [{"kind": "met"}]})",
                  "bad.json");
        FAIL() << "was read";
    } catch (const InvalidPattern& invalid) {
        EXPECT_EQ(invalid.problems.size(), 4u) << invalid.what();
    }
}

TEST(rule_file, in_a_pattern_is_kept_in_its_own_unit) {
    const Pattern pattern = read_pattern(edited::tunic, "tunic.json");
    ASSERT_TRUE(pattern.cutting);
    EXPECT_EQ(pattern.unit, Unit::cm);
    EXPECT_EQ(pattern.cutting->allowance.joined_mm, 15);
    const Pattern again = read_pattern(write_pattern(pattern), "written");
    EXPECT_EQ(again.cutting, pattern.cutting);
    EXPECT_EQ(*pattern.cutting, read_rule(page_rule().dump(), "page.json"));
    EXPECT_NE(write_pattern(pattern).find("\"joined\": 15"), std::string::npos);
}

CuttingRule any_rule() {
    const auto any_name = [] { return *rc::gen::element<std::string>("side", "hem", "neck", "Saum \"b\""); };
    const auto any_length = [] { return *testing::evenly(0, 1'000'000) / 997.0; };
    CuttingRule rule;
    rule.name = any_name();
    rule.unit = *rc::gen::element(Unit::mm, Unit::cm, Unit::inch);
    if (*rc::gen::arbitrary<bool>()) rule.allowance.edges = {{"hem", any_name(), any_length()}};
    if (*rc::gen::arbitrary<bool>()) rule.allowance.openings = {{any_name(), "", any_length()}};
    if (*rc::gen::arbitrary<bool>()) rule.allowance.seams = {{any_name(), "", any_length()}};
    if (*rc::gen::arbitrary<bool>()) rule.allowance.joined_mm = any_length();
    if (*rc::gen::arbitrary<bool>()) rule.allowance.elsewhere_mm = any_length();
    for (const auto& [kind, word] : rule_corner_names) {
        if (*rc::gen::arbitrary<bool>()) continue;
        CornerRule corner{{"side", "hem"}, *rc::gen::element<std::string>("", "front"), kind, "", {}};
        if (speaks_of_one_edge(kind)) corner.whose = *rc::gen::element<std::string>("side", "hem");
        if (kind == RuleCornerKind::blunted) corner.limit_mm = 1 + any_length();
        rule.corners.push_back(corner);
    }
    for (const auto& [form, word] : notch_form_names) {
        if (*rc::gen::arbitrary<bool>()) continue;
        rule.notches = NotchRule{form, any_length(), {}};
        if (form != NotchForm::slit) rule.notches->width_mm = any_length();
    }
    if (*rc::gen::arbitrary<bool>()) rule.darts.is_notched = *rc::gen::arbitrary<bool>();
    if (*rc::gen::arbitrary<bool>()) rule.darts.trim = DartTrim{any_length(), any_length()};
    return rule;
}

// A computed length may have no number in the unit, and is then written as its nearest (see from_mm); from
// what was read once nothing changes any more.
RC_GTEST_PROP(rule_file, written_and_read_again_is_the_same, ()) {
    const CuttingRule rule = read_rule(write_rule(any_rule()), "generated");
    const std::string text = write_rule(rule);
    RC_ASSERT(read_rule(text, "written") == rule);
    RC_ASSERT(write_rule(read_rule(text, "written")) == text);
}

}  // namespace
}  // namespace dartwright
