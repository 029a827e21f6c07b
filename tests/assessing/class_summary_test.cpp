#include "dartwright/assessing/class_summary.hpp"

#include <gtest/gtest.h>

#include "dartwright/assessing/lost_marks.hpp"
#include "support/sample_assessments.hpp"

namespace dartwright {
namespace {

using support::assessment_of;

ClassSummary summary_of(const std::vector<Assessment>& drafts) {
    ClassSummary summary;
    for (const Assessment& draft : drafts) summary.add(draft);
    return summary;
}

std::vector<Assessment> eight() {
    std::vector<Assessment> drafts = support::sample_class();
    drafts.resize(8);
    return drafts;
}

TEST(lost_marks, are_by_fault_or_by_a_rung) {
    EXPECT_FALSE(has_lost_by_fault(assessment_of("a")));
    EXPECT_FALSE(has_lost_by_fault(assessment_of("a", {"noted", "accepted", "full"})));
    EXPECT_TRUE(has_lost_by_fault(assessment_of("a", {"full", "full", "fault"})));
    EXPECT_TRUE(costly_lines(assessment_of("a").tasks[0].criteria[0]).empty());
    JudgedCriterion criterion = assessment_of("a", {"noted", "full", "full"}).tasks[0].criteria[0];
    criterion.lines.push_back(support::place_line(60, "full", ""));
    ASSERT_EQ(costly_lines(criterion).size(), 1u);
    EXPECT_EQ(costly_lines(criterion)[0], &criterion.lines[0]);
}

TEST(class_summary, keeps_the_marks_of_each_task) {
    const ClassSummary summary = summary_of(eight());
    ASSERT_EQ(summary.tasks.size(), 2u);
    EXPECT_EQ(summary.tasks[0].name, "move the dart");
    EXPECT_EQ(summary.tasks[0].of, 6);
    ASSERT_EQ(summary.students.size(), 8u);
    EXPECT_EQ(summary.students[1].task_marks, (std::vector<std::optional<double>>{5, 3}));
    EXPECT_FALSE(summary.students[5].unread.empty());
    const ClassCount count = count_of(summary.students);
    EXPECT_EQ(count.all, 8u);
    EXPECT_EQ(count.with_all_marks, 2u);
    EXPECT_EQ(count.with_faults, 3u);
    EXPECT_EQ(count.unread, 1u);
}

TEST(class_summary, of_a_first_draft_that_was_not_read_still_knows_the_tasks) {
    const ClassSummary summary = summary_of({support::unread_assessment("a"), assessment_of("b")});
    EXPECT_EQ(summary.tasks.size(), 2u);
    EXPECT_TRUE(summary.students[0].task_marks.empty());
    EXPECT_EQ(summary.students[1].task_marks.size(), 2u);
}

TEST(labels, tell_students_of_one_name_apart_by_their_files) {
    const std::vector<std::string> labels = labels_of(summary_of(eight()).students);
    EXPECT_EQ(labels[0], "amal");
    EXPECT_EQ(labels[6], "class/gul");
    EXPECT_EQ(labels[7], "evening/gul");
}

TEST(labels, are_as_much_of_the_path_as_tells_two_apart) {
    const auto student = [](const char* name, const char* file) {
        StudentSummary out;
        out.student = name;
        out.file = file;
        return out;
    };
    EXPECT_EQ(labels_of({student("draft", "a/monday/draft.json"), student("draft", "b/monday/draft.json"),
                         student("draft", "b/friday/draft.json"), student("bo.2", "b/bo.2.json"),
                         student("twice", "twice.json"), student("twice", "twice.json")}),
              (std::vector<std::string>{"a/monday/draft", "b/monday/draft", "friday/draft", "bo.2", "twice",
                                        "twice (2)"}));
}

TEST(commonest_faults, come_first) {
    const ClassSummary summary = summary_of(eight());
    const std::vector<const MeasureSummary*> faults = commonest_faults(summary);
    ASSERT_EQ(faults.size(), 3u);
    // Place: two faults and two on a rung; seam: two faults; angle: two on a rung.
    EXPECT_EQ(faults[0]->what, "the side dart's place along the side");
    EXPECT_EQ(faults[0]->with_fault, 2u);
    EXPECT_EQ(faults[0]->on_a_rung, 2u);
    EXPECT_EQ(faults[0]->remedy, remedy_in_general(Criterion::place)) << "no student's figures";
    EXPECT_EQ(faults[1]->what, "the seam side");
    EXPECT_EQ(faults[1]->with_fault, 2u);
    EXPECT_EQ(faults[2]->with_fault, 0u);
    EXPECT_EQ(faults[2]->on_a_rung, 2u);
}

TEST(measures, remember_differences_and_what_was_asked_of_all) {
    ClassSummary summary = summary_of(eight());
    EXPECT_EQ(summary.measures[0].expected, 60);
    EXPECT_EQ(summary.measures[0].differences, (std::vector<float>{0, 1.5F, 3, 6.25F, 6.25F, 0, 0}));
    Assessment other = assessment_of("other");
    other.tasks[0].criteria[0].lines[0].expected = 61;
    summary.add(other);
    EXPECT_FALSE(summary.measures[0].expected);
}

TEST(measures, are_no_more_than_are_remembered) {
    ClassSummary summary;
    for (std::size_t i = 0; i < most_measures + 5; ++i) {
        Assessment draft = assessment_of("a", {"fault", "full", "full"});
        draft.tasks[0].criteria[0].lines[0].what = "a thing of its own " + std::to_string(i);
        summary.add(draft);
    }
    EXPECT_EQ(summary.measures.size(), most_measures);
    EXPECT_EQ(summary.students.size(), most_measures + 5);
}

TEST(spread, is_least_middle_and_greatest) {
    const Spread odd = spread_of({3, -1, 2});
    EXPECT_EQ(odd.least, -1);
    EXPECT_EQ(odd.median, 2);
    EXPECT_EQ(odd.greatest, 3);
    EXPECT_EQ(spread_of({1, 2, 3, 4}).median, 2.5);
    EXPECT_THROW(spread_of({}), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
