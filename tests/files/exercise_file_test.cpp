// Exercise files: what is read, and what is refused in which words.

#include "dartwright/files/exercise_file.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/files/output_file.hpp"

namespace dartwright {
namespace {

const std::string file = DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/bust-dart-to-side.json";

nlohmann::ordered_json side_json() {
    return nlohmann::ordered_json::parse(read_text_file(file));
}

TEST(exercise_file, is_read_with_the_files_that_it_names) {
    const Exercise exercise = read_exercise_file(file);
    EXPECT_EQ(exercise.unit, Unit::inch);
    EXPECT_EQ(exercise.pattern.name, "chorus bodice, inches");
    ASSERT_EQ(exercise.tasks.size(), 6u);
    const Task& move = exercise.tasks[0];
    EXPECT_EQ(std::get<OperationTask>(move.what).operation.operation, "pivot");
    ASSERT_EQ(move.marks.size(), 6u);
    EXPECT_EQ(move.marks[0].criterion, Criterion::place);
    EXPECT_EQ(move.marks[0].marks, 4);
    const auto& measure = std::get<MeasureTask>(exercise.tasks[4].what);
    EXPECT_EQ(measure.line, "bust line");
    EXPECT_DOUBLE_EQ(measure.wearer_mm, 32 * 25.4);
    EXPECT_DOUBLE_EQ(measure.ease_mm[1], 3 * 25.4);
    EXPECT_EQ(std::get<AllowanceTask>(exercise.tasks[3].what).rule.allowance.joined_mm, 0.625 * 25.4);
    ASSERT_EQ(exercise.ladders.lengths.size(), 3u);
    EXPECT_EQ(exercise.ladders.lengths[2], (Rung{"noted", 25.4 / 8, 0.5}));
    EXPECT_EQ(exercise.may_differ.size(), 4u);
}

TEST(exercise_file, that_is_empty_is_no_exercise) {
    try {
        read_exercise("", "class.json");
        FAIL() << "an empty file was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u);
        EXPECT_EQ(invalid.problems[0].found, "an empty file");
        EXPECT_EQ(invalid.problems[0].expected, "an exercise file");
    }
}

TEST(exercise_file, number_of_marks_is_divided_by_what_the_task_can_be_judged_by) {
    nlohmann::ordered_json json = side_json();
    json["tasks"][0]["marks"] = 12;
    json.erase("ladder");
    const Exercise exercise = read_exercise(json.dump(), file);
    ASSERT_EQ(exercise.tasks[0].marks.size(), 6u);
    for (const CriterionMarks& each : exercise.tasks[0].marks) EXPECT_EQ(each.marks, 2);
    EXPECT_EQ(exercise.ladders.lengths, usual_ladders().lengths);
}

TEST(exercise_file, pattern_and_rule_may_be_in_it_or_in_their_files) {
    nlohmann::ordered_json json = side_json();
    json["pattern"] = nlohmann::ordered_json::parse(
        read_text_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice-inch.json"));
    json["unit"] = "cm";
    json["tasks"][3]["allowances"] = "../rules/toile.json";
    const Exercise exercise = read_exercise(json.dump(), file);
    EXPECT_EQ(exercise.pattern.unit, Unit::inch);
    EXPECT_EQ(exercise.unit, Unit::cm);
    EXPECT_EQ(std::get<AllowanceTask>(exercise.tasks[3].what).rule.name, "toile");
    EXPECT_DOUBLE_EQ(std::get<MeasureTask>(exercise.tasks[4].what).wearer_mm, 320);
}

TEST(exercise_file, length_in_an_operation_without_a_unit_is_in_its_own) {
    nlohmann::ordered_json json = side_json();
    const auto finished_of = [&](const std::string& to) {
        json["tasks"][0]["do"]["to"] = to;
        return prepared(read_exercise(json.dump(), file)).finished.pieces;
    };
    const std::vector<Piece> said = finished_of("side@2 1/2in/armhole");
    EXPECT_EQ(finished_of("side@2 1/2/armhole"), said);
    json["unit"] = "cm";
    EXPECT_EQ(finished_of("side@6.35/armhole"), said);
    EXPECT_FALSE(finished_of("side@6.35mm/armhole") == said);
    // One that would be too long.
    EXPECT_THROW(finished_of("side@63.5/armhole"), InvalidPattern);
}

TEST(exercise_file, rung_as_text_without_a_unit_is_in_its_own) {
    nlohmann::ordered_json json = side_json();
    json["ladder"]["lengths"] = {{{"rung", "full"}, {"within", "1/16"}, {"marks", "100%"}}};
    EXPECT_EQ(read_exercise(json.dump(), file).ladders.lengths[0].within, 25.4 / 16);
}

struct Wrong {
    const char* pointer;
    const char* value;  ///< null: taken away
    FileProblem problem;
};
class wrong_exercise : public ::testing::TestWithParam<Wrong> {};

TEST_P(wrong_exercise, is_refused_in_clear_words) {
    const Wrong& wrong = GetParam();
    nlohmann::ordered_json json = side_json();
    const nlohmann::ordered_json::json_pointer place(wrong.pointer);
    if (wrong.value)
        json[place] = nlohmann::ordered_json::parse(wrong.value);
    else
        json[place.parent_pointer()].erase(place.back());
    try {
        read_exercise(json.dump(), file);
        FAIL() << "it was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_EQ(invalid.problems[0].pointer, wrong.problem.pointer);
        EXPECT_NE(invalid.problems[0].found.find(wrong.problem.found), std::string::npos) << invalid.what();
        EXPECT_NE(invalid.problems[0].expected.find(wrong.problem.expected), std::string::npos)
            << invalid.what();
    }
}

INSTANTIATE_TEST_SUITE_P(
    each, wrong_exercise,
    ::testing::Values(
        Wrong{"/dartwright_exercise", "2", {"/dartwright_exercise", "2", "1, the version"}},
        Wrong{"/task", "[]", {"/task", "unknown key", "tasks"}},
        Wrong{"/tasks", "[]", {"/tasks", "an empty list", "one task or more"}},
        Wrong{"/tasks/0/marks/gome", "3", {"/tasks/0/marks/gome", "unknown key", "gone"}},
        Wrong{"/tasks/0/marks/check",
              "3",
              {"/tasks/0/marks/check", "leaves nothing to judge", "\"place\", \"angle\""}},
        Wrong{"/tasks/0/marks/place", "-1", {"/tasks/0/marks/place", "-1", "marks of more than 0"}},
        Wrong{"/tasks/0/marks", nullptr, {"/tasks/0", "no key \"marks\"", "the marks"}},
        Wrong{"/tasks/1/name", "\"move the dart\"", {"/tasks/1/name", "again", "a name of its own"}},
        Wrong{"/tasks/1/keep", "false", {"/tasks/1/keep", "false", "true"}},
        Wrong{"/tasks/1/size", "true", {"/tasks/1/size", "a second thing", "one thing a task"}},
        Wrong{"/tasks/5/size", nullptr, {"/tasks/5", "nothing that is asked", "\"do\""}},
        Wrong{"/tasks/0/do/dart",
              "\"bust dart\"",
              {"/tasks/0/do", "bust dart", "an operation that can be done"}},
        Wrong{"/tasks/0/do/to",
              "\"side@40in/armhole\"",
              {"/tasks/0/do", "beyond the end", "an operation that can be done"}},
        Wrong{"/tasks/0/do/share", "0.5", {"/tasks/0/do/share", "0.5", "text in double quotes"}},
        Wrong{"/tasks/0/do/operation", "\"fold\"", {"/tasks/0/do", "fold", "an operation that can be done"}},
        Wrong{"/tasks/2/leave_out", "[\"dart-leg\"]", {"/tasks/2/leave_out/0", "dart-leg", "\"dart-legs\""}},
        Wrong{"/tasks/3/allowances", "\"none.json\"", {"/tasks/3/allowances", "none.json", "a cutting rule"}},
        Wrong{"/tasks/3/allowances/allowance/joined",
              "-1",
              {"/tasks/3/allowances/allowance/joined", "-1", "not negative"}},
        Wrong{"/tasks/4/measure", "\"bust\"", {"/tasks/4/measure", "bust", "\"bust line\""}},
        Wrong{"/tasks/4/ease", "[3, 2]", {"/tasks/4/ease", "a list of 2", "the least ease first"}},
        Wrong{"/pattern", "\"../workshop/none.json\"", {"/pattern", "none.json", "a pattern"}},
        Wrong{"/ladder/lengths/1/within",
              "\"1 furlong\"",
              {"/ladder/lengths/1/within", "1 furlong", "\"1/16in\""}},
        Wrong{"/ladder/lengths/1/within", "\"0.5mm\"", {"/ladder/lengths/1", "no wider", "growing"}},
        Wrong{"/ladder/lengths/1/marks", "\"40%\"", {"/ladder/lengths/2", "keeps more", "falling"}},
        Wrong{"/ladder/angles/0/rung", "\"fault\"", {"/ladder/angles/0/rung", "fault", "another name"}},
        Wrong{"/ladder/angles/0/marks", "1.5", {"/ladder/angles/0/marks", "1.5", "100%"}},
        Wrong{"/hand", "\"steady\"", {"/hand", "steady", "\"fine\", \"ordinary\""}},
        Wrong{"/may_differ/0", "\"sleeves\"", {"/may_differ/0", "sleeves", "\"back_off\""}}));

TEST(exercise_file, says_in_a_word_how_exact_a_hand_must_be) {
    nlohmann::ordered_json json = side_json();
    json["hand"] = "beginner";
    EXPECT_EQ(read_exercise(json.dump(), file).ladders.lengths[2].within, 25.4 / 8) << "a ladder is a ladder";
    json["ladder"].erase("lengths");
    const Exercise exercise = read_exercise(json.dump(), file);
    EXPECT_EQ(exercise.hand, Hand::beginner);
    EXPECT_EQ(exercise.ladders.lengths[0].within, 2);
    EXPECT_EQ(exercise.ladders.angles[0].within, 0.5);
}

/// A dart is moved to the shoulder, and the other merged into it.
nlohmann::ordered_json two_steps() {
    return nlohmann::ordered_json::parse(R"({"dartwright_exercise": 1, "name": "two steps", "unit": "cm",
        "pattern": "../workshop/chorus-bodice.json",
        "tasks": [{"name": "move", "marks": 15, "do": {"operation": "pivot", "piece": "front",
                   "dart": "waist dart", "to": "shoulder@50%", "name": "shoulder dart"}},
                  {"name": "merge", "marks": 15, "do": {"operation": "merge", "piece": "front",
                   "dart": "side dart", "with": "shoulder dart"}}]})");
}

TEST(exercise_file, plain_number_of_marks_is_divided_by_what_the_later_tasks_leave) {
    const Exercise exercise = read_exercise(two_steps().dump(), file);
    ASSERT_EQ(exercise.tasks[0].marks.size(), 2u);
    EXPECT_EQ(exercise.tasks[0].marks[0].criterion, Criterion::place);
    EXPECT_EQ(exercise.tasks[0].marks[1].criterion, Criterion::gone);
    EXPECT_EQ(exercise.tasks[0].marks[1].marks, 7.5);
    EXPECT_EQ(exercise.tasks[1].marks.size(), 5u);
}

TEST(exercise_file, marks_that_nobody_has_to_earn_are_refused_with_the_way_out) {
    nlohmann::ordered_json json = two_steps();
    json["tasks"][0]["marks"] = {{"place", 4}, {"angle", 3}};
    json["tasks"].push_back({{"name", "keep"}, {"keep", true}, {"marks", 4}});
    try {
        read_exercise(json.dump(), file);
        FAIL() << "it was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_EQ(invalid.problems[0].pointer, "/tasks/0/marks/angle");
        EXPECT_EQ(
            invalid.problems[0].found,
            "marks of the task \"move\" for \"angle\", of which the later tasks leave nothing to judge");
        EXPECT_EQ(invalid.problems[0].expected,
                  "marks without \"angle\", or the steps as exercises of their own, one after the other");
    }
}

TEST(exercise_file, task_that_is_done_already_is_refused_with_the_way_out) {
    nlohmann::ordered_json json = two_steps();
    json["pattern"] = DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice.json";
    json["unit"] = "mm";
    // It stops 20 mm short of its pivot.
    for (const char* back_off : {"20mm", "20.4mm"}) {
        json["tasks"] = {
            {{"name", "shorten"},
             {"do",
              {{"operation", "repoint"}, {"piece", "front"}, {"dart", "waist dart"}, {"back_off", back_off}}},
             {"marks", 4}}};
        try {
            read_exercise(json.dump(), file);
            FAIL() << "it was read";
        } catch (const InvalidPattern& invalid) {
            ASSERT_FALSE(invalid.problems.empty());
            EXPECT_EQ(invalid.problems[0].pointer, "/tasks/0/marks") << invalid.what();
            EXPECT_EQ(invalid.problems[0].found.find("marks of the task \"shorten\" for "), 0u)
                << invalid.what();
            EXPECT_NE(invalid.problems[0].expected, "");
        }
    }
    json["tasks"][0]["do"]["back_off"] = "40mm";
    EXPECT_EQ(read_exercise(json.dump(), file).tasks.size(), 1u);
}

TEST(exercise_file, what_the_pattern_does_not_have_cannot_be_kept_for_marks) {
    nlohmann::ordered_json json = side_json();
    nlohmann::ordered_json pattern = nlohmann::ordered_json::parse(
        read_text_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice-inch.json"));
    pattern.erase("seams");
    json["pattern"] = pattern;
    json["tasks"].erase(3);
    try {
        read_exercise(json.dump(), file);
        FAIL() << "it was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_EQ(invalid.problems[0].pointer, "/tasks/1/marks/seams");
        EXPECT_NE(invalid.problems[0].found.find("there is nothing to judge"), std::string::npos);
    }
    json["tasks"][1]["marks"] = 9;
    EXPECT_EQ(read_exercise(json.dump(), file).tasks[1].marks.size(), 4u);
}

TEST(exercise_file, all_problems_are_told_in_one_go) {
    nlohmann::ordered_json json = side_json();
    json["unit"] = "feet";
    json["tasks"][4]["wearer"] = "wide";
    json["may_differ"] = true;
    // However long the way to a file is, its name is told.
    std::string far_away = "../rules/";
    for (int i = 0; i < 100; ++i) far_away += "./";
    for (const std::string& toile : {std::string("../rules/toile.json"), far_away + "toile.json"}) {
        json["pattern"] = toile;
        try {
            read_exercise(json.dump(), file);
            FAIL() << "it was read";
        } catch (const InvalidPattern& invalid) {
            // What stands in a file that is no pattern is not shown.
            EXPECT_EQ(invalid.problems.size(), 4u) << invalid.what();
            EXPECT_NE(std::string(invalid.what()).find(toile + "\", which is no pattern file"),
                      std::string::npos)
                << invalid.what();
            EXPECT_EQ(std::string(invalid.what()).find("allowance"), std::string::npos);
        }
    }
}

TEST(exercise_file, that_names_another_says_all_of_that_name_in_one_line) {
    nlohmann::ordered_json json = side_json();
    const std::string far_away = std::string(300, 'f') + "/two\nlines.json";
    json["pattern"] = far_away;
    try {
        read_exercise(json.dump(), file);
        FAIL() << "it was read";
    } catch (const InvalidPattern& invalid) {
        ASSERT_EQ(invalid.problems.size(), 1u) << invalid.what();
        EXPECT_NE(invalid.problems[0].found.find(std::string(300, 'f')), std::string::npos);
        EXPECT_EQ(invalid.problems[0].found.find('\n'), std::string::npos) << invalid.problems[0].found;
    }
}

}  // namespace
}  // namespace dartwright
