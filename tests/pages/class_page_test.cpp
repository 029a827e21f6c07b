// The page for a class. tests/outside/check_class reads it with a parser of others.

#include "dartwright/pages/class_page.hpp"

#include <gtest/gtest.h>

#include "dartwright/files/markup_text.hpp"
#include "dartwright/pages/spread_plot.hpp"
#include "support/sample_assessments.hpp"

namespace dartwright {
namespace {

std::string page_of(const std::vector<Assessment>& drafts, const std::string& title = "side dart",
                    Unit unit = Unit::mm) {
    const ClassPage about{title, "Move one dart.", usual_ladders(), "", unit};
    ClassSummary summary;
    for (const Assessment& draft : drafts) summary.add(draft);
    const std::vector<std::string> labels = labels_of(summary.students);
    std::string page = class_page_begin(about, summary);
    for (std::size_t i = 0; i < drafts.size(); ++i)
        page += class_page_student(drafts[i], i + 1, labels[i], about);
    return page + class_page_end();
}

std::size_t count_in(const std::string& text, const std::string& words) {
    std::size_t count = 0;
    for (std::size_t at = 0; (at = text.find(words, at)) != std::string::npos; ++at) ++count;
    return count;
}

TEST(class_page, has_a_row_and_a_part_for_every_student) {
    const std::vector<Assessment> drafts = support::sample_class();
    const std::string page = page_of(drafts);
    EXPECT_EQ(count_in(page, "<article class=\"student\""), drafts.size());
    for (std::size_t i = 1; i <= drafts.size(); ++i) {
        const std::string id = "student-" + std::to_string(i);
        EXPECT_EQ(count_in(page, "id=\"" + id + "\""), 1u);
        EXPECT_GE(count_in(page, "href=\"#" + id + "\""), 1u);
    }
    EXPECT_NE(page.find("22 drafts: 2 have all marks, 17 have faults, 1 was not marked."), std::string::npos)
        << page.substr(0, page.find("<main"));
}

TEST(class_page, says_the_limits_to_each_student_who_lost_marks_and_the_name_on_each_printed_page) {
    const std::string page =
        page_of({support::assessment_of("amal", {"noted", "full", "full"}), support::assessment_of("bo")});
    // On the class's part and on amal's.
    EXPECT_EQ(count_in(page, "Lengths: full within 1 mm, accepted within 1.59 mm"), 2u);
    // As the head of the lines and of the seams, for paper alone.
    EXPECT_GE(count_in(page, "<tr class=\"again\"><td colspan=\"8\"><bdi>amal</bdi>"), 1u);
    EXPECT_NE(page.find(".again { display: none; }"), std::string::npos);
    EXPECT_NE(page.find(".brief, .again { display: table-row; }"), std::string::npos);
}

TEST(class_page, writes_lengths_in_the_exercises_unit) {
    Assessment draft = support::assessment_of("amal", {"noted", "full", "full"});
    ASSERT_FALSE(draft.tasks.empty());
    JudgedLine line;
    line.criterion = draft.tasks[0].criteria.at(0).criterion;
    line.what = "the length of the test";
    line.quantity = Quantity::length;
    line.expected = 63.5;
    line.found = 61.0;
    line.difference = -2.5;
    line.rung = "noted";
    draft.tasks[0].criteria[0].lines = {line};
    draft.seams = {{"side", 254, 255.27, 0, 1.27, false}};
    const auto cells_on = [&](Unit unit, const std::vector<std::string>& cells) {
        const std::string page = page_of({draft}, "side dart", unit);
        for (const std::string& cell : cells)
            EXPECT_GE(count_in(page, "<td class=\"number\">" + cell + "</td>"), 1u) << cell;
        return page;
    };
    cells_on(Unit::mm, {"63.5 mm", "61 mm", "-2.5 mm", "254 mm", "+1.27 mm"});
    cells_on(Unit::cm, {"6.35 cm", "6.1 cm", "-0.25 cm", "25.4 cm", "+0.127 cm"});
    const std::string page = cells_on(Unit::inch, {"2.5 in", "2.402 in", "-0.098 in", "10 in", "+0.05 in"});
    EXPECT_EQ(count_in(page, "Lengths: full within 0.039 in, accepted within 0.063 in"), 2u);
    EXPECT_EQ(count_in(page, " mm<"), 0u) << "what is asked, found, and drawn of it";
}

TEST(class_page, numbers_its_printed_pages) {
    EXPECT_EQ(count_in(page_of({support::assessment_of("bo")}),
                       "content: \"page \" counter(page) \" of \" counter(pages)"),
              1u);
}

TEST(class_page, puts_the_remedy_under_the_fault_where_the_screen_is_narrow) {
    const std::string page = page_of({support::assessment_of("amal", {"noted", "full", "full"})});
    EXPECT_EQ(count_in(page, "data-column=\"Remedy\""), 1u);
    EXPECT_NE(page.find("content: attr(data-column)"), std::string::npos);
}

TEST(class_page, shows_markup_and_obeys_none) {
    const std::string page = page_of(support::sample_class(), "<script>alert(2)</script>");
    EXPECT_EQ(count_in(page, "<script"), 1u);
    EXPECT_EQ(count_in(page, "<img"), 0u);
    EXPECT_NE(page.find("<title>&lt;script&gt;alert(2)&lt;/script&gt;: the class</title>"),
              std::string::npos);
    for (const std::string& name : support::harmful_names()) {
        EXPECT_NE(page.find("<bdi>" + markup_text(name)), std::string::npos) << name;
    }
}

TEST(class_page, fetches_nothing) {
    std::vector<Assessment> drafts = support::sample_class();
    drafts.resize(8);  // names that only speak of pictures are left out
    const std::string page = page_of(drafts);
    for (const char* word : {"http:", "https:", "url(", "@import", " src=", "<link"})
        EXPECT_EQ(page.find(word), std::string::npos) << word;
}

TEST(class_page, says_line_by_line_what_cost_marks_and_how_to_mend_it) {
    const std::string page = page_of({support::assessment_of("dana", {"fault", "accepted", "full"})});
    for (const char* words : {"<bdi>dana</bdi>: 4.5 of 9 marks", "60 mm", "66.25 mm", "+6.25 mm",
                              "Move the dart towards the armhole.", "href=\"#student-1-line-1\"",
                              "tr id=\"student-1-line-2\"", "0 of 4", "1.5 of 2", "196.75 mm"})
        EXPECT_NE(page.find(words), std::string::npos) << words;
    EXPECT_EQ(page.find("student-1-line-3"), std::string::npos);
}

TEST(class_page, of_a_draft_that_was_not_read_says_why) {
    const std::string page = page_of({support::unread_assessment("fritz")});
    EXPECT_NE(page.find("Not marked: /pieces/0/outline: found &quot;&lt;b&gt;&quot;"), std::string::npos);
    EXPECT_NE(page.find("Nobody lost a mark."), std::string::npos);
    EXPECT_NE(page.find("Nothing was measured."), std::string::npos);
}

TEST(class_page, numbers_a_fault_on_the_piece_it_names_or_the_nearest) {
    Assessment draft = support::assessment_of("elif", {"fault", "full", "fault"});
    draft.pieces.push_back(
        {"back", "back", {{500, 0}, {700, 0}, {700, 400}}, {{500, 0}, {700, 0}, {700, 390}}});
    draft.tasks[1].criteria[0].lines[0].at = Point{690, 380};
    const std::string page = page_of({draft});
    EXPECT_NE(page.find("The piece front as drafted, with what was asked laid over it; marked are 1<"),
              std::string::npos);
    EXPECT_NE(page.find("The piece back as drafted, with what was asked laid over it; marked are 2<"),
              std::string::npos);
}

TEST(class_page, is_the_same_however_often_it_is_made) {
    EXPECT_EQ(page_of(support::sample_class()), page_of(support::sample_class()));
}

TEST(spread_plot, has_a_bar_where_drafts_lie_and_rungs_within_reach) {
    MeasureSummary measure;
    measure.differences = {0, 0, 0, 3};
    const std::string plot = spread_plot(measure, usual_ladders());
    EXPECT_EQ(count_in(plot, "<rect "), 2u);
    EXPECT_EQ(count_in(plot, "class=\"rung\""), 6u);
    EXPECT_NE(plot.find("off by 0 mm to +3 mm, the middle one by 0 mm"), std::string::npos);
    EXPECT_NE(plot.find(">+5 mm<"), std::string::npos);
}

TEST(spread_plot, gathers_what_lies_far_out_at_its_end) {
    MeasureSummary measure;
    measure.differences = {0, 2540};
    const std::string plot = spread_plot(measure, usual_ladders());
    EXPECT_EQ(count_in(plot, "<rect "), 2u);
    EXPECT_NE(plot.find("\u2265 +20 mm"), std::string::npos) << plot;
    measure.quantity = Quantity::number;
    measure.differences = {0};
    EXPECT_EQ(count_in(spread_plot(measure, usual_ladders()), "<rect "), 1u);
}

}  // namespace
}  // namespace dartwright
