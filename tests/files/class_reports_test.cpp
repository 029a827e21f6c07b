// A class as CSV, JUnit XML and TAP. Other readers read them in tests/outside/check_class.

#include <gtest/gtest.h>

#include <pugixml.hpp>

#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/class_csv.hpp"
#include "dartwright/files/class_junit.hpp"
#include "dartwright/files/class_tap.hpp"
#include "dartwright/files/markup_text.hpp"
#include "dartwright/words/clean_text.hpp"
#include "support/sample_assessments.hpp"

namespace dartwright {
namespace {

using support::assessment_of;
using support::sample_class;

TEST(quantity, is_rounded_and_has_its_unit) {
    EXPECT_EQ(quantity_text(Quantity::length, 12.346), "12.35 mm");
    EXPECT_EQ(quantity_text(Quantity::area, 12345), "123.45 cm²");
    EXPECT_EQ(quantity_text(Quantity::length, 12.346, Unit::cm), "1.235 cm");
    EXPECT_EQ(quantity_text(Quantity::length, 63.5, Unit::inch), "2.5 in");
    EXPECT_EQ(quantity_text(Quantity::area, 12345, Unit::cm), "123.45 cm²");
    EXPECT_EQ(quantity_text(Quantity::area, 100 * 645.16, Unit::inch), "100 in²");
    EXPECT_EQ(signed_quantity_text(Quantity::length, 0.001, Unit::inch), "0 in");
    EXPECT_EQ(signed_quantity_text(Quantity::length, 25.4, Unit::inch), "+1 in");
    EXPECT_EQ(quantity_text(Quantity::angle, 11.75), "11.75°");
    EXPECT_EQ(quantity_text(Quantity::number, 1.0254), "1.025");
    EXPECT_EQ(signed_quantity_text(Quantity::length, 3.2), "+3.2 mm");
    EXPECT_EQ(signed_quantity_text(Quantity::length, -3.2), "-3.2 mm");
    EXPECT_EQ(signed_quantity_text(Quantity::length, 0.001), "0 mm");
    EXPECT_EQ(signed_quantity_text(Quantity::length, -0.001), "0 mm");
}

TEST(line_words, say_what_was_expected_found_and_how_far_off) {
    EXPECT_EQ(line_text(support::place_line(63.25, "noted", "")),
              "front: the side dart's place along the side: asked 60 mm, found 63.25 mm, off by +3.25 mm "
              "(noted)");
    EXPECT_EQ(line_text(support::seam_line("fault", "")),
              "the seam side: asked true, found not true (fault)");
}

TEST(class_csv, has_a_row_a_draft) {
    const std::vector<std::string> tasks{"move the dart", "keep the seams"};
    EXPECT_EQ(class_csv_head(tasks),
              "student,file,marks,of,per cent,move the dart,keep the seams,faults,not marked because\r\n");
    EXPECT_EQ(class_csv_row(assessment_of("bo", {"accepted", "full", "fault"}), "evening/bo", tasks),
              "evening/bo,bo.json,5,9,55.56,5,0,1,\r\n");
    EXPECT_EQ(class_csv_row(support::unread_assessment("fritz"), "fritz", tasks),
              "fritz,fritz.json,,,,,,,\"/pieces/0/outline: found \"\"<b>\"\"; expected an outline\"\r\n");
}

TEST(csv_cell, is_no_formula) {
    EXPECT_EQ(csv_cell("=1+1"), "'=1+1");
    EXPECT_EQ(csv_cell("+1"), "'+1");
    EXPECT_EQ(csv_cell("-1"), "'-1");
    EXPECT_EQ(csv_cell("@SUM(A1,A2)"), "\"'@SUM(A1,A2)\"");
    EXPECT_EQ(csv_cell("\t=1"), "' =1");
    EXPECT_EQ(csv_cell("\r=1"), "' =1");
    EXPECT_EQ(csv_cell("  \t @x"), "'    @x");
    EXPECT_EQ(csv_cell("\uFF1D1"), "'\uFF1D1");
    EXPECT_EQ(csv_cell("\x01=1"), "'=1");
    EXPECT_EQ(csv_cell("front-side=1"), "front-side=1");
    EXPECT_EQ(csv_cell(""), "");
    EXPECT_EQ(csv_cell("a \"b\""), "\"a \"\"b\"\"\"");
}

TEST(class_junit, is_xml_that_says_who_failed_what) {
    std::string text = class_junit_begin("side dart <1> & \"more\"");
    for (const Assessment& of : sample_class()) text += class_junit_student(of, of.student);
    text += class_junit_end();
    pugi::xml_document document;
    ASSERT_TRUE(document.load_string(text.c_str(), pugi::parse_full)) << text;
    const pugi::xml_node root = document.child("testsuites");
    EXPECT_STREQ(root.attribute("name").value(), "side dart <1> & \"more\"");
    std::size_t index = 0;
    for (const pugi::xml_node suite : root.children()) {
        const Assessment of = sample_class().at(index++);
        EXPECT_STREQ(suite.name(), "testsuite");
        EXPECT_EQ(suite.attribute("name").value(), clean_text(of.student));
        EXPECT_EQ(suite.select_nodes("testcase").size(), suite.attribute("tests").as_ullong());
        EXPECT_EQ(suite.select_nodes("testcase/failure").size(), suite.attribute("failures").as_ullong());
        EXPECT_EQ(suite.select_nodes("testcase/error").size(), suite.attribute("errors").as_ullong());
        EXPECT_TRUE(suite.select_nodes("//script | //img").empty());
    }
    EXPECT_EQ(index, sample_class().size());
    const pugi::xml_node dana = root.find_child_by_attribute("name", "dana");
    const pugi::xml_node failure = dana.find_child_by_attribute("name", "place").child("failure");
    EXPECT_STREQ(
        failure.attribute("message").value(),
        "0 of 4 marks; front: the side dart's place along the side: asked 60 mm, found 66.25 mm, off by "
        "+6.25 mm (fault)");
    EXPECT_NE(std::string(failure.text().get()).find("Remedy: Move the dart"), std::string::npos);
    const pugi::xml_node bo = root.find_child_by_attribute("name", "bo");
    EXPECT_EQ(bo.attribute("failures").as_int(), 0);
    const pugi::xml_node said = bo.find_child_by_attribute("name", "place").child("system-out");
    EXPECT_EQ(std::string(said.text().get()).find("3 of 4 marks\n"), 0u);
    const pugi::xml_node fritz = root.find_child_by_attribute("name", "fritz");
    EXPECT_STREQ(fritz.child("testcase").child("error").attribute("message").value(),
                 "/pieces/0/outline: found \"<b>\"; expected an outline");
}

TEST(class_tap, has_a_test_point_a_criterion) {
    ClassTap tap;
    EXPECT_EQ(tap.begin(), "TAP version 14\n");
    EXPECT_EQ(tap.student(assessment_of("amal"), "amal"),
              "ok 1 - amal: move the dart: place\nok 2 - amal: move the dart: angle\n"
              "ok 3 - amal: keep the seams: seams\n");
    EXPECT_EQ(tap.student(assessment_of("bo", {"accepted", "full", "fault"}), "# TODO \\ bo"),
              "ok 4 - \\# TODO \\\\ bo: move the dart: place\n"
              "  ---\n  marks: 3\n  of: 4\n  rung: \"accepted\"\n  lines:\n"
              "    - found: \"front: the side dart's place along the side: asked 60 mm, found 61.5 mm, "
              "off by +1.5 "
              "mm (accepted)\"\n"
              "      remedy: \"Move the dart towards the armhole.\"\n  ...\n"
              "ok 5 - \\# TODO \\\\ bo: move the dart: angle\n"
              "not ok 6 - \\# TODO \\\\ bo: keep the seams: seams\n"
              "  ---\n  marks: 0\n  of: 3\n  rung: \"fault\"\n  lines:\n"
              "    - found: \"the seam side: asked true, found not true (fault)\"\n"
              "      remedy: \"Walk the side again from the waist.\"\n  ...\n");
    EXPECT_EQ(tap.student(support::unread_assessment("fritz"), "fritz"),
              "not ok 7 - fritz: not marked\n  ---\n"
              "  message: \"/pieces/0/outline: found \\\"<b>\\\"; expected an outline\"\n  ...\n");
    EXPECT_EQ(tap.end(), "1..7\n");
}

TEST(markup_text, is_shown_and_not_obeyed) {
    EXPECT_EQ(markup_text("<b> & \"c\" 'd'"), "&lt;b&gt; &amp; &quot;c&quot; &#39;d&#39;");
    EXPECT_EQ(markup_text("a\x01\nb"), "a b");
}

}  // namespace
}  // namespace dartwright
