// Assessments as lines: everything is kept, the same bytes come back, what is wrong is refused in clear
// words.

#include "dartwright/files/assessment_lines.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "support/evenly.hpp"
#include "support/sample_assessments.hpp"

namespace dartwright {
namespace {

using nlohmann::json;

AssessmentLine line_of(const Assessment& assessment) {
    return {"0123456789abcdef", "fedcba9876543210", assessment};
}

// The published test vectors of FNV-1a, 64 bits (from memory, not verified).
TEST(digest, is_that_of_the_published_vectors) {
    EXPECT_EQ(digest_of(""), "cbf29ce484222325");
    EXPECT_EQ(digest_of("a"), "af63dc4c8601ec8c");
    EXPECT_EQ(digest_of("foobar"), "85944171f73967e8");
}

TEST(assessment_line, says_everything) {
    Assessment of = support::assessment_of("amal", {"noted", "fault", "full"});
    of.notes = {"the draft is mirrored"};
    of.tasks[0].criteria[0].lines[0].found_words = "63 mm on the left";
    const std::string text = write_assessment_line(line_of(of));
    EXPECT_EQ(text.find('\n'), std::string::npos);
    const json read = json::parse(text);
    EXPECT_EQ(read["dartwright_assess"], 1);
    EXPECT_EQ(read["student"], "amal");
    EXPECT_EQ(read["file"], "class/amal.json");
    EXPECT_EQ(read["exercise_digest"], "0123456789abcdef");
    EXPECT_EQ(read["draft_digest"], "fedcba9876543210");
    EXPECT_EQ(read["unread"], nullptr);
    EXPECT_EQ(read["marks"], 5.0);
    EXPECT_EQ(read["of"], 9.0);
    EXPECT_EQ(read["notes"], json({"the draft is mirrored"}));
    EXPECT_EQ(read["tasks"][0]["name"], "move the dart");
    EXPECT_EQ(read["tasks"][0]["words"], "Move the waist dart to the side, 60 mm from the armhole.");
    EXPECT_EQ(read["tasks"][1]["words"], nullptr);
    EXPECT_EQ(read["tasks"][0]["marks"], 2.0);
    EXPECT_EQ(read["tasks"][0]["of"], 6.0);
    const json place = read["tasks"][0]["criteria"][0];
    EXPECT_EQ(place["criterion"], "place");
    EXPECT_EQ(place["marks"], 2.0);
    EXPECT_EQ(place["of"], 4.0);
    EXPECT_EQ(place["rung"], "noted");
    EXPECT_EQ(place["lines"][0], json::parse(R"({"criterion": "place",
        "what": "the side dart's place along the side", "piece": "front", "edge": "side", "dart": "side dart",
        "seam": null, "quantity": "length", "expected": 60, "found": 63, "difference": 3,
        "expected_words": null, "found_words": "63 mm on the left", "rung": "noted", "at": [210.25, 140.5],
        "remedy": "Move the dart towards the armhole."})"));
    EXPECT_EQ(read["pieces"][0]["name"], "front");
    EXPECT_EQ(read["pieces"][0]["draft_name"], "front");
    EXPECT_EQ(read["pieces"][0]["found"][1], json({220, 0}));
    EXPECT_EQ(read["pieces"][0]["expected"][1], json({222.13, 0}));
    EXPECT_EQ(read["seams"][0], json::parse(R"({"name": "side", "lengths": [196.5, 196.75], "ease": 0,
        "difference": 0.25, "passed": true})"));
}

TEST(assessment_line, is_read_back_and_written_to_the_same_bytes) {
    std::size_t read = 0;
    for (const Assessment& of : support::sample_class()) {
        const std::string text = write_assessment_line(line_of(of));
        const AssessmentLine back = read_assessment_line(text, "class.jsonl: line 1");
        EXPECT_EQ(write_assessment_line(back), text);
        EXPECT_EQ(back.assessment.unread, of.unread);
        EXPECT_EQ(back.assessment.unread_kind, of.unread_kind);
        EXPECT_EQ(back.assessment.tasks.size(), of.tasks.size());
        ++read;
    }
    EXPECT_GT(read, 20u);
}

TEST(assessment_line, says_of_which_kind_it_is_that_it_was_not_marked) {
    EXPECT_EQ(json::parse(write_assessment_line(line_of(support::assessment_of("amal"))))["unread_kind"],
              nullptr);
    Assessment of = support::unread_assessment("fritz");
    for (const auto& [kind, word] : unread_kind_words) {
        of.unread_kind = kind;
        const std::string text = write_assessment_line(line_of(of));
        EXPECT_EQ(json::parse(text)["unread_kind"], word);
        EXPECT_EQ(read_assessment_line(text, "line 1").assessment.unread_kind, kind);
    }
}

TEST(assessment_line, of_an_earlier_version_says_not_of_which_kind_it_is) {
    json earlier = json::parse(write_assessment_line(line_of(support::unread_assessment("fritz"))));
    earlier.erase("unread_kind");
    const Assessment read = read_assessment_line(earlier.dump(), "line 1").assessment;
    EXPECT_FALSE(read.unread_kind);
    EXPECT_EQ(read.unread, support::unread_assessment("fritz").unread);
    earlier["unread_kind"] = "too much memory";
    EXPECT_THROW(read_assessment_line(earlier.dump(), "line 1"), InvalidPattern);
}

TEST(assessment_line, of_numbers_that_are_not_finite_and_bytes_that_are_not_text_can_be_read) {
    Assessment of = support::assessment_of("bytes \xFF");
    JudgedLine& line = of.tasks[0].criteria[0].lines[0];
    line.found = std::numeric_limits<double>::quiet_NaN();
    line.difference = std::numeric_limits<double>::infinity();
    line.at = Point{1, std::numeric_limits<double>::infinity()};
    of.pieces[0].found[0].x = std::numeric_limits<double>::quiet_NaN();
    const Assessment back = read_assessment_line(write_assessment_line(line_of(of)), "line 1").assessment;
    EXPECT_EQ(back.student, "bytes \uFFFD");
    const JudgedLine& line_back = back.tasks[0].criteria[0].lines[0];
    EXPECT_FALSE(line_back.found || line_back.difference || line_back.at);
    EXPECT_EQ(line_back.expected, 60);
    EXPECT_EQ(back.pieces[0].found.size(), of.pieces[0].found.size() - 1);
}

std::string generated_text() {
    return *rc::gen::element<std::string>("", "side", "à la reine", "«вытачка»", "\"quoted\"", "back\\slash",
                                          "前", "tab\there", "=1+1", "a\nb");
}
double generated_number() {
    return *testing::evenly(-1'000'000'007, 1'000'000'007) / 1e4 + *testing::evenly(0, 1000) / 3e6;
}
std::optional<double> generated_optional() {
    if (*rc::gen::arbitrary<bool>()) return std::nullopt;
    return generated_number();
}

Assessment generated_assessment() {
    Assessment of = support::assessment_of(generated_text(), {"noted", "full", "fault"});
    of.file = generated_text();
    of.marks = *testing::evenly(0, 400) / 12.0;
    for (JudgedTask& task : of.tasks) {
        task.words = generated_text();
        for (JudgedCriterion& criterion : task.criteria)
            for (JudgedLine& line : criterion.lines) {
                line.criterion = rc::gen::elementOf(criterion_names).operator*().criterion;
                line.expected = generated_optional();
                line.found = generated_optional();
                line.difference = generated_optional();
                line.remedy = generated_text();
                line.edge = generated_text();
                if (*rc::gen::arbitrary<bool>()) line.at.reset();
            }
    }
    for (Point& p : of.pieces[0].found) p = {generated_number(), generated_number()};
    return of;
}

RC_GTEST_PROP(assessment_line, is_rounded_once_and_then_stays, ()) {
    const Assessment of = generated_assessment();
    const std::string text = write_assessment_line(line_of(of));
    const Assessment back = read_assessment_line(text, "line 1").assessment;
    RC_ASSERT(write_assessment_line(line_of(back)) == text);
    RC_ASSERT(back.student == of.student);
    RC_ASSERT(std::abs(back.marks - of.marks) <= 5.1e-7);
    for (std::size_t i = 0; i < of.tasks.size(); ++i)
        for (std::size_t k = 0; k < of.tasks[i].criteria.size(); ++k) {
            const JudgedLine& before = of.tasks[i].criteria[k].lines[0];
            const JudgedLine& after = back.tasks[i].criteria[k].lines[0];
            RC_ASSERT(before.criterion == after.criterion);
            RC_ASSERT(before.difference.has_value() == after.difference.has_value());
            if (before.difference) RC_ASSERT(std::abs(*before.difference - *after.difference) <= 5.1e-7);
            RC_ASSERT(before.remedy == after.remedy);
            RC_ASSERT(before.edge == after.edge);
            RC_ASSERT(before.at.has_value() == after.at.has_value());
        }
    for (std::size_t i = 0; i < of.pieces[0].found.size(); ++i)
        RC_ASSERT(distance(of.pieces[0].found[i], back.pieces[0].found[i]) <= 0.0071);
}

struct Slip {
    const char* pointer;
    const char* value;  ///< null: taken away
    const char* says;
};
class wrong_line : public ::testing::TestWithParam<Slip> {};

TEST_P(wrong_line, is_refused_in_clear_words) {
    const Slip& slip = GetParam();
    json read = json::parse(
        write_assessment_line(line_of(support::assessment_of("amal", {"noted", "full", "full"}))));
    const json::json_pointer place(slip.pointer);
    if (slip.value)
        read[place] = json::parse(slip.value);
    else
        read[place.parent_pointer()].erase(place.back());
    try {
        read_assessment_line(read.dump(), "class.jsonl: line 7");
        FAIL() << slip.pointer << " is accepted";
    } catch (const InvalidPattern& invalid) {
        EXPECT_EQ(invalid.file, "class.jsonl: line 7");
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_NE(std::string(invalid.what()).find(slip.says), std::string::npos) << invalid.what();
    }
}

INSTANTIATE_TEST_SUITE_P(
    all, wrong_line,
    ::testing::Values(
        Slip{"/dartwright_assess", "2", "/dartwright_assess: found 2; expected 1"},
        Slip{"/dartwright_assess", nullptr, "no key \"dartwright_assess\""},
        Slip{"/student", "3", "/student: found 3; expected text"},
        Slip{"/exercise_digest", nullptr, "no key \"exercise_digest\""},
        Slip{"/marks", "-1", "/marks: found -1; expected marks"},
        Slip{"/marks", "\"5\"", "/marks: found \"5\"; expected a number"},
        Slip{"/tasks", "{}", "/tasks: found an empty object; expected a list"},
        Slip{"/tasks/0/criteria/0/criterion", "\"spot\"", "/tasks/0/criteria/0/criterion: found \"spot\""},
        Slip{"/tasks/0/criteria/0/lines/0/quantity", "\"miles\"", "found \"miles\"; expected \"length\""},
        Slip{"/tasks/0/criteria/0/lines/0/found", "\"63\"", "expected a number"},
        Slip{"/tasks/0/criteria/0/lines/0/at", "[1]", "expected a point"},
        Slip{"/tasks/0/criteria/0/lines/0/colour", "1", "the unknown key \"colour\""},
        Slip{"/notes/0", "1", "/notes/0: found 1; expected text"},
        Slip{"/pieces/0/found/0", "7", "/pieces/0/found/0: found 7; expected a point"},
        Slip{"/seams/0/lengths", "[1]", "expected the lengths of its two sides"},
        Slip{"/seams/0/passed", "1", "expected true or false"}));

TEST(wrong_line, that_is_torn_says_so) {
    const std::string text = write_assessment_line(line_of(support::assessment_of("amal")));
    for (const std::size_t kept : {std::size_t{0}, std::size_t{1}, text.size() / 2, text.size() - 1})
        EXPECT_THROW(read_assessment_line(text.substr(0, kept), "line 1"), InvalidPattern) << kept;
}

}  // namespace
}  // namespace dartwright
