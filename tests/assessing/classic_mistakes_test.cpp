// What a class hands in: the work done well in every valid way, and each classic mistake once. Every mistake
// costs its own criterion and no other.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "assessing/drafts.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

using testing::dart_item;
using testing::image;
using testing::lost;
using testing::Lost;
using testing::piece_of;

const PreparedExercise& side_exercise() {
    static const PreparedExercise exercise =
        prepared(read_exercise_file(DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/bust-dart-to-side.json"));
    return exercise;
}

PivotRequest asked_pivot() {
    PivotRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = "side@2.5in/armhole";
    request.name = "side dart";
    return request;
}
Pattern draft_by(const PivotRequest& request) {
    return pivot(side_exercise().exercise.pattern, request).pattern;
}
Pattern right_draft() {
    return draft_by(asked_pivot());
}

Lost lost_by(const Pattern& draft) {
    return lost(assess(side_exercise(), draft));
}

bool has_note(const Assessment& assessment, const std::string& words) {
    for (const std::string& note : assessment.notes)
        if (note.find(words) != std::string::npos) return true;
    return false;
}

TEST(classic_mistakes, right_draft_gets_all_marks) {
    const Assessment assessment = assess(side_exercise(), right_draft());
    EXPECT_EQ(lost(assessment), Lost{});
    EXPECT_DOUBLE_EQ(assessment.marks, 36);
    EXPECT_DOUBLE_EQ(assessment.of, 36);
    EXPECT_EQ(assessment.notes, std::vector<std::string>{});
    ASSERT_EQ(assessment.pieces.size(), 2u);
    ASSERT_EQ(assessment.seams.size(), 3u);
    EXPECT_TRUE(assessment.seams[0].is_true);
}

TEST(classic_mistakes, other_back_off_is_no_fault_where_it_may_differ) {
    PivotRequest request = asked_pivot();
    request.back_off_mm = 35;
    const Assessment assessment = assess(side_exercise(), draft_by(request));
    EXPECT_EQ(lost(assessment), Lost{});
    EXPECT_TRUE(has_note(assessment, "short of its pivot"));

    Exercise strict = side_exercise().exercise;
    std::erase(strict.may_differ, Freedom::back_off);
    EXPECT_EQ(lost(assess(prepared(strict), draft_by(request))), (Lost{{"pivot", "fault"}}));
}

// A length as words is in the exercise's unit; numbers stay in mm.
TEST(classic_mistakes, lengths_are_said_in_the_unit_of_the_exercise) {
    PivotRequest request = asked_pivot();
    request.to = "side@3in/armhole";
    request.back_off_mm = 25.4;
    Exercise exercise = side_exercise().exercise;
    const auto remedy_in = [&](Unit unit) {
        exercise.unit = unit;
        const Assessment assessment = assess(prepared(exercise), draft_by(request));
        const JudgedLine& line = testing::criterion_in(assessment, Criterion::place)->lines.at(0);
        EXPECT_NEAR(line.expected.value_or(0), 63.5, 1e-6);
        EXPECT_NEAR(line.found.value_or(0), 76.2, 1e-6);
        EXPECT_EQ(assessment.notes.size(), 1u);
        return line.remedy + " " + assessment.notes[0];
    };
    const auto words = [](const std::string& off, const std::string& stops, const std::string& asked) {
        return "Move the dart " + off + " towards the armhole. The point of side dart stops " + stops +
               " short of its pivot, " + asked + " in the exercise; either is right.";
    };
    EXPECT_EQ(remedy_in(Unit::inch), words("0.5 in", "1 in", "0.875 in"));
    EXPECT_EQ(remedy_in(Unit::cm), words("1.27 cm", "2.54 cm", "2.223 cm"));
    EXPECT_EQ(remedy_in(Unit::mm), words("12.7 mm", "25.4 mm", "22.2 mm"));
}

TEST(classic_mistakes, turning_the_other_part_is_no_fault) {
    // The part above the cut was turned up instead of the part below down: all of it lies turned.
    const Assessment assessment =
        assess(side_exercise(), image({radians(10), 1, false, {0, 0}}, right_draft()));
    EXPECT_EQ(lost(assessment), Lost{});
    EXPECT_TRUE(has_note(assessment, "The front lies turned by 10.0 degrees"));
}

TEST(classic_mistakes, grain_left_behind_when_its_part_was_turned_costs_the_check) {
    Pattern draft = right_draft();
    Grain& grain = *piece_of(draft, "front").grain;
    std::swap(grain.from, grain.to);
    EXPECT_EQ(lost_by(draft), Lost{}) << "either way along is the same";
    const Motion turn = turn_about(grain.from, turn_by(radians(10)));
    grain.to = apply(turn, grain.to);
    const Assessment assessment = assess(side_exercise(), draft);
    EXPECT_EQ(lost(assessment), (Lost{{"check", "fault"}}));
    const JudgedCriterion& check = *testing::criterion_in(assessment, Criterion::check);
    ASSERT_EQ(check.lines.size(), 1u);
    EXPECT_NEAR(std::abs(check.lines[0].difference.value_or(0)), 10, 1e-6);
    // It stays a fault if the grain is not said to lie along anything, and none that it lies elsewhere.
    grain.along.clear();
    EXPECT_EQ(lost_by(draft), (Lost{{"check", "fault"}}));
    grain = *piece_of(const_cast<Pattern&>(side_exercise().finished), "front").grain;
    grain.from = grain.from + Vector{20, 5};
    grain.to = grain.to + Vector{20, 5};
    EXPECT_EQ(lost_by(draft), Lost{});
}

struct MouthEnds {
    Point a;
    Point b;
};
// Where the side is cut, and that place turned about the pivot by the dart's angle.
MouthEnds copied_mouth(const Piece& front) {
    const DartFigures old = figures_of(front.outline, dart_item(front, "waist dart"));
    const std::vector<Run> runs = runs_of(front.outline);
    const Run& side = *find_run(runs, "side");
    const Point a = place_on_run(front.outline, side, side.length - 2.5 * 25.4).point;
    return {a, apply(turn_about(old.pivot, turn_by(old.angle_rad)), a)};
}

Pattern copied_draft() {
    Pattern draft = side_exercise().exercise.pattern;
    Piece& front = piece_of(draft, "front");
    const MouthEnds ends = copied_mouth(front);
    DartItem dart = *front.outline.items[dart_item(front, "waist dart")].as_dart();
    const double back_off = distance(*dart.pivot, dart.point);
    dart.name = "side dart";
    dart.point = *dart.pivot + back_off * unit(middle(ends.a, ends.b) - *dart.pivot);
    std::vector<OutlineItem>& items = front.outline.items;
    const auto side = std::find_if(items.begin(), items.end(), [](const OutlineItem& item) {
        return item.as_edge() && item.as_edge()->edge == "side";
    });
    const OutlineItem above{EdgeItem{"side", StraightShape{}, 0}, side->to};
    side->to = ends.a;
    items.insert(side + 1, {OutlineItem{dart, ends.b}, above});
    return draft;
}

TEST(classic_mistakes, dart_copied_with_the_old_one_left_open_costs_gone) {
    const Assessment assessment = assess(side_exercise(), copied_draft());
    EXPECT_EQ(lost(assessment), (Lost{{"gone", "fault"}}));
    const JudgedCriterion& gone = *testing::criterion_in(assessment, Criterion::gone);
    EXPECT_NEAR(*gone.lines.at(0).found, 10.026, 0.001);
    EXPECT_NE(gone.lines[0].remedy.find("Close the old dart"), std::string::npos);
    const JudgedCriterion& angles = *testing::criterion_in(assessment, Criterion::angles);
    EXPECT_NEAR(*angles.lines.at(0).found, 2 * *angles.lines[0].expected, 0.001);
}

TEST(classic_mistakes, nothing_done_earns_nothing_for_the_task_and_all_for_the_rest) {
    const Assessment assessment = assess(side_exercise(), side_exercise().exercise.pattern);
    EXPECT_DOUBLE_EQ(assessment.tasks.at(0).marks, 0);
    EXPECT_DOUBLE_EQ(assessment.marks, 18);
}

TEST(classic_mistakes, turning_about_the_point_instead_of_the_pivot_costs_the_pivot) {
    Exercise wrong = side_exercise().exercise;
    Piece& front = piece_of(wrong.pattern, "front");
    DartItem& dart = *front.outline.items[dart_item(front, "waist dart")].as_dart();
    dart.pivot = dart.point;
    PivotRequest request = asked_pivot();
    request.back_off_mm = 20;
    const Assessment assessment = assess(side_exercise(), pivot(wrong.pattern, request).pattern);
    EXPECT_EQ(lost(assessment), (Lost{{"pivot", "fault"}}));
    // By as much as the point had been short of the pivot.
    EXPECT_NEAR(*testing::criterion_in(assessment, Criterion::pivot)->lines.at(0).found, 0.875 * 25.4, 0.01);
}

TEST(classic_mistakes, dart_that_aims_beside_the_pivot_costs_the_pivot) {
    Pattern draft = right_draft();
    Piece& front = piece_of(draft, "front");
    const std::size_t item = dart_item(front, "side dart");
    DartItem& dart = *front.outline.items[item].as_dart();
    const DartFigures figures = figures_of(front.outline, item);
    const Vector along = perpendicular(unit(figures.b - figures.a));
    dart.pivot.reset();
    dart.point = figures.point - 6.0 * along;
    EXPECT_EQ(lost_by(draft), Lost{}) << "nearer to the mouth it still aims at the pivot";
    dart.pivot = figures.pivot + 6.0 * unit(figures.b - figures.a);
    dart.point = *dart.pivot - 20.0 * along;
    EXPECT_TRUE(lost_by(draft).contains("pivot"));
}

TEST(classic_mistakes, one_leg_longer_costs_the_legs) {
    Pattern draft = right_draft();
    Piece& front = piece_of(draft, "front");
    const std::size_t item = dart_item(front, "side dart");
    const DartFigures figures = figures_of(front.outline, item);
    front.outline.items[item].to = figures.b + 4 * unit(figures.b - figures.pivot);
    EXPECT_EQ(lost_by(draft), (Lost{{"legs", "fault"}}));
}

TEST(classic_mistakes, mouth_left_as_a_v_costs_the_mouth) {
    Pattern draft = right_draft();
    Piece& front = piece_of(draft, "front");
    const std::size_t item = dart_item(front, "side dart");
    const DartFigures figures = figures_of(front.outline, item);
    front.outline.items[item - 1].to = figures.a + 4 * unit(figures.a - figures.pivot);
    front.outline.items[item].to = figures.b + 4 * unit(figures.b - figures.pivot);
    EXPECT_EQ(lost_by(draft), (Lost{{"mouth", "fault"}}));
}

// The side's end at the waist moved along it, and the waist drawn to it.
Pattern with_longer_side(double by_mm) {
    Pattern draft = right_draft();
    Outline& outline = piece_of(draft, "front").outline;
    for (std::size_t i = 0; i + 1 < outline.items.size(); ++i) {
        const EdgeItem* next = outline.items[i + 1].as_edge();
        const EdgeItem* edge = outline.items[i].as_edge();
        if (!edge || !next || edge->edge != "waist" || next->edge != "side") continue;
        outline.items[i].to =
            outline.items[i].to - by_mm * unit(outline.items[i + 1].to - outline.items[i].to);
    }
    return draft;
}

TEST(classic_mistakes, seam_trued_on_one_side_only_costs_the_seam) {
    EXPECT_EQ(lost_by(with_longer_side(5)), (Lost{{"seams", "fault"}}));
    EXPECT_EQ(lost_by(with_longer_side(3)), (Lost{{"seams", "noted"}}));
    EXPECT_EQ(lost_by(with_longer_side(-1.5)), (Lost{{"seams", "accepted"}}));
}

TEST(classic_mistakes, mirrored_is_no_fault_and_is_said) {
    const Assessment assessment = assess(side_exercise(), image({0.3, 1, true, {40, 900}}, right_draft()));
    EXPECT_EQ(lost(assessment), Lost{});
    EXPECT_TRUE(has_note(assessment, "drawn the other way up"));
}

TEST(classic_mistakes, one_piece_mirrored_is_no_fault) {
    Pattern draft = right_draft();
    piece_of(draft, "front") = mirrored(MirrorLine{}, piece_of(draft, "front"));
    EXPECT_EQ(lost_by(draft), Lost{});
}

TEST(classic_mistakes, wrong_unit_costs_the_size_alone) {
    for (const double unit : {10.0, 0.1, 25.4, 1 / 25.4, 2.54, 1 / 2.54}) {
        const Assessment assessment = assess(side_exercise(), image({0, unit, false, {}}, right_draft()));
        EXPECT_EQ(lost(assessment), (Lost{{"size", "fault"}})) << unit;
        const JudgedLine& line = testing::criterion_in(assessment, Criterion::size)->lines.at(0);
        EXPECT_NEAR(*line.found, unit, 1e-9 * unit);
        EXPECT_NE(line.found_words.find("and the file says"), std::string::npos) << line.found_words;
    }
}

TEST(classic_mistakes, another_unit_is_said_as_what_the_numbers_are_in) {
    const auto words_of = [](double unit) {
        const Assessment assessment = assess(side_exercise(), image({0, unit, false, {}}, right_draft()));
        const JudgedLine& line = testing::criterion_in(assessment, Criterion::size)->lines.at(0);
        return line.found_words.substr(0, line.found_words.find('?')) + "? " + line.remedy;
    };
    EXPECT_EQ(words_of(2.54),
              "2.54 times full size: numbers in cm, and the file says inches? If the numbers are cm, let the "
              "file say so; if they are inches, draw at full size.");
    EXPECT_EQ(words_of(1 / 2.54).substr(0, 74),
              "full size divided by 2.54: numbers in inches, and the file says cm? If the");
    EXPECT_EQ(words_of(10).substr(0, 61), "10 times full size: numbers in mm, and the file says cm? If t");
    EXPECT_EQ(words_of(1 / 25.4).substr(0, 66),
              "full size divided by 25.4: numbers in inches, and the file says mm");
}

TEST(classic_mistakes, bad_print_costs_the_size_alone) {
    EXPECT_EQ(lost_by(image({0, 0.97, false, {}}, right_draft())), (Lost{{"size", "fault"}}));
    // The longest run, of 13 in and more, is 2 mm short.
    EXPECT_EQ(lost_by(image({0, 0.994, false, {}}, right_draft())), (Lost{{"size", "noted"}}));
}

TEST(classic_mistakes, size_that_no_task_asks_for_costs_the_lengths_and_is_a_note_without_these) {
    Exercise exercise = side_exercise().exercise;
    std::erase_if(exercise.tasks,
                  [](const Task& task) { return std::holds_alternative<SizeTask>(task.what); });
    const Pattern draft = image({0, 0.97, false, {}}, right_draft());
    EXPECT_EQ(lost(assess(prepared(exercise), draft)), (Lost{{"lengths", "fault"}}));
    std::erase_if(exercise.tasks,
                  [](const Task& task) { return std::holds_alternative<KeepTask>(task.what); });
    std::erase_if(exercise.tasks,
                  [](const Task& task) { return std::holds_alternative<MeasureTask>(task.what); });
    const Assessment assessment = assess(prepared(exercise), draft);
    EXPECT_EQ(lost(assessment), Lost{});
    EXPECT_TRUE(has_note(assessment, "0.97 times full size"));
}

TEST(classic_mistakes, names_are_free_where_they_may_differ) {
    const Pattern draft = testing::renamed(right_draft());
    const Assessment assessment = assess(side_exercise(), draft);
    EXPECT_TRUE(has_note(assessment, "\"my side\" is \"side\""));
    EXPECT_EQ(lost(assessment), Lost{});

    Exercise strict = side_exercise().exercise;
    std::erase(strict.may_differ, Freedom::names);
    EXPECT_EQ(lost(assess(prepared(strict), draft)), (Lost{{"check", "fault"}}));
}

TEST(classic_mistakes, dart_in_another_edge_costs_its_place) {
    PivotRequest request = asked_pivot();
    request.to = "armhole@1in/side";
    EXPECT_EQ(lost_by(draft_by(request)), (Lost{{"place", "fault"}}));
}

TEST(classic_mistakes, half_the_dart_left_costs_gone_alone) {
    PivotRequest request = asked_pivot();
    request.part.share = 0.5;
    EXPECT_EQ(lost_by(draft_by(request)), (Lost{{"gone", "fault"}}));
}

TEST(classic_mistakes, moved_notch_costs_the_notches) {
    Pattern draft = right_draft();
    piece_of(draft, "back").notches.at(0).at += 2;
    EXPECT_EQ(lost_by(draft), (Lost{{"notches", "noted"}}));
}

TEST(classic_mistakes, allowance_of_another_width_costs_the_allowances) {
    Pattern draft = right_draft();
    for (auto& [edge, width] : piece_of(draft, "back").allowance)
        if (edge == "side") width = 0.625 * 25.4 + 1.5;
    EXPECT_EQ(lost_by(draft), (Lost{{"allowances", "accepted"}}));
    piece_of(draft, "back").allowance.clear();
    EXPECT_EQ(lost_by(draft), (Lost{{"allowances", "fault"}}));
}

TEST(classic_mistakes, pivots_that_are_not_written_are_no_fault) {
    Pattern draft = right_draft();
    for (Piece& piece : draft.pieces)
        for (OutlineItem& item : piece.outline.items)
            if (DartItem* dart = item.as_dart()) dart->pivot.reset();
    EXPECT_EQ(lost_by(draft), Lost{});
}

TEST(classic_mistakes, notches_of_a_piece_that_is_missing_are_missing) {
    Pattern draft = right_draft();
    draft.pieces.pop_back();
    draft.seams.clear();
    const Lost lost = lost_by(draft);
    EXPECT_TRUE(lost.contains("notches"));
}

TEST(classic_mistakes, nothing_done_earns_nothing_where_a_piece_was_to_be_divided) {
    const PreparedExercise exercise = prepared(read_exercise(
        R"({"dartwright_exercise": 1, "name": "a princess seam", "unit": "cm",
            "pattern": "../workshop/chorus-bodice.json",
            "tasks": [{"name": "divide the front", "marks": 10,
                       "do": {"operation": "close", "piece": "front", "dart": "waist dart",
                              "with": "side dart", "as": "seam"}}]})",
        DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/princess-seam.json"));
    EXPECT_DOUBLE_EQ(assess(exercise, exercise.exercise.pattern).marks, 0);
    EXPECT_DOUBLE_EQ(assess(exercise, exercise.finished).marks, 10);
}

TEST(classic_mistakes, front_without_its_back_loses_the_backs_part_alone) {
    Pattern draft = right_draft();
    draft.pieces.pop_back();
    draft.seams.clear();
    const Assessment assessment = assess(side_exercise(), draft);
    const Assessment whole = assess(side_exercise(), right_draft());
    for (const std::size_t task : {0u, 5u})
        EXPECT_DOUBLE_EQ(assessment.tasks.at(task).marks, whole.tasks.at(task).of) << task;
    for (const Criterion half : {Criterion::lengths, Criterion::angles, Criterion::area, Criterion::notches,
                                 Criterion::check, Criterion::allowances}) {
        const JudgedCriterion& judged = *testing::criterion_in(assessment, half);
        EXPECT_DOUBLE_EQ(judged.marks, judged.of / 2) << word_of(half);
        EXPECT_EQ(judged.rung, "fault");
    }
    // Of three seams one is the front's alone; the others cannot be walked, nor the bust measured all round.
    const JudgedCriterion& seams = *testing::criterion_in(assessment, Criterion::seams);
    EXPECT_DOUBLE_EQ(seams.marks, seams.of / 3);
    EXPECT_EQ(testing::criterion_in(assessment, Criterion::measure)->marks, 0);
}

TEST(classic_mistakes, one_part_of_an_edge_misspelt_is_a_name_and_nothing_else) {
    Pattern draft = right_draft();
    Piece& front = piece_of(draft, "front");
    draft.seams.clear();
    front.outline.items[dart_item(front, "side dart") - 1].as_edge()->edge = "sdie";
    std::erase_if(front.notches, [](const Notch& each) { return each.edge == "side"; });
    const Assessment free = assess(side_exercise(), draft);
    const bool is_free = lost(free) == Lost{} || lost(free) == Lost{{"notches", "fault"}};
    EXPECT_TRUE(is_free) << testing::explained(free);
    EXPECT_TRUE(has_note(free, "\"sdie\" is part of \"side\""));
    Exercise strict = side_exercise().exercise;
    std::erase(strict.may_differ, Freedom::names);
    const Assessment named = assess(prepared(strict), draft);
    EXPECT_EQ(testing::criterion_in(named, Criterion::check)->rung, "noted");
    EXPECT_EQ(testing::criterion_in(named, Criterion::place)->rung, "full");
}

TEST(classic_mistakes, check_begins_to_cost_at_its_tolerance_and_falls_from_there) {
    // The back's grain turned by more and more: its tolerance is half a degree, as the first rung.
    const auto rung_of = [](const Exercise& exercise, double off_deg) {
        Pattern draft = right_draft();
        Grain& grain = *piece_of(draft, "back").grain;
        grain.to = apply(turn_about(grain.from, turn_by(radians(off_deg))), grain.to);
        const JudgedCriterion check =
            *testing::criterion_in(assess(prepared(exercise), draft), Criterion::check);
        return check.rung;
    };
    Exercise exercise = side_exercise().exercise;
    EXPECT_EQ(rung_of(exercise, 0.45), "full");
    EXPECT_EQ(rung_of(exercise, 0.55), "accepted");
    EXPECT_EQ(rung_of(exercise, 1.5), "noted");
    EXPECT_EQ(rung_of(exercise, 2.1), "fault");
    exercise.hand = Hand::ordinary;
    EXPECT_EQ(rung_of(exercise, 0.95), "full");
    EXPECT_EQ(rung_of(exercise, 1.5), "accepted");
    EXPECT_EQ(rung_of(exercise, 4.1), "fault");
    exercise.hand = Hand::beginner;
    EXPECT_EQ(rung_of(exercise, 1.9), "full");
}

TEST(classic_mistakes, right_draft_rounded_to_the_millimetre_keeps_most_of_the_checks) {
    Pattern draft = right_draft();
    const auto rounded = [](Point& p) { p = {std::round(p.x), std::round(p.y)}; };
    for (Piece& piece : draft.pieces) {
        rounded(piece.outline.start);
        for (OutlineItem& item : piece.outline.items) {
            rounded(item.to);
            if (EdgeItem* edge = item.as_edge())
                if (auto* cubic = std::get_if<CubicShape>(&edge->shape))
                    for (Point& p : cubic->controls) rounded(p);
            if (DartItem* dart = item.as_dart()) {
                rounded(dart->point);
                if (dart->pivot) rounded(*dart->pivot);
            }
        }
    }
    Exercise exercise = side_exercise().exercise;
    const Assessment unsaid = assess(prepared(exercise), draft);
    EXPECT_GT(testing::criterion_in(unsaid, Criterion::check)->marks, 0) << testing::explained(unsaid);
    exercise.hand = Hand::ordinary;
    const Assessment ordinary = assess(prepared(exercise), draft);
    EXPECT_GE(testing::criterion_in(ordinary, Criterion::check)->marks,
              0.75 * testing::criterion_in(ordinary, Criterion::check)->of)
        << testing::explained(ordinary);
}

TEST(classic_mistakes, piece_that_is_missing_is_said) {
    Pattern draft = right_draft();
    draft.pieces.erase(draft.pieces.begin());
    draft.seams.clear();
    const Assessment assessment = assess(side_exercise(), draft);
    EXPECT_TRUE(has_note(assessment, "No piece of the draft is the front"));
    EXPECT_DOUBLE_EQ(assessment.tasks.at(0).marks, 0);
    // Of its edges, notches and cloth nothing else can be done.
    for (const JudgedLine& line : testing::criterion_in(assessment, Criterion::lengths)->lines)
        if (line.piece == "front") {
            EXPECT_EQ(line.remedy, "Hand in the front as well.");
        }
}

TEST(classic_mistakes, another_pattern_altogether_is_judged_or_says_why) {
    for (const char* name :
         {"workshop/chorus-bodice.json", "workshop/after-fitting.json", "workshop/first-pattern.json",
          "blocks/close-fitting.json", "faults/seam-length.json"}) {
        const Assessment assessment = assess(
            side_exercise(), read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR "/fixtures/") + name));
        EXPECT_TRUE(assessment.unread.empty() || assessment.tasks.empty()) << name;
        EXPECT_EQ(assessment.unread.find("no end"), std::string::npos) << name << ": " << assessment.unread;
        EXPECT_LE(assessment.marks, 0.7 * assessment.of) << name;
    }
}

// Panels of a skirt, flared at the sides; no piece of the bodice is anything like them.
Pattern skirt() {
    Pattern pattern;
    pattern.name = "skirt";
    for (const char* name : {"front", "back"}) {
        Piece piece;
        piece.name = name;
        piece.outline.start = {0, 0};
        piece.outline.items = {{EdgeItem{"hem", StraightShape{}, 0}, {300, 0}},
                               {EdgeItem{"side", StraightShape{}, 0}, {250, 600}},
                               {EdgeItem{"waist", StraightShape{}, 0}, {0, 600}},
                               {EdgeItem{"centre front", StraightShape{}, 0}, {0, 0}}};
        pattern.pieces.push_back(piece);
    }
    return pattern;
}

TEST(classic_mistakes, skirt_handed_in_for_a_bodice_is_said_to_be_another_pattern_and_earns_nothing) {
    const Assessment assessment = assess(side_exercise(), skirt());
    EXPECT_TRUE(assessment.is_another_pattern);
    ASSERT_FALSE(assessment.notes.empty());
    EXPECT_EQ(assessment.notes[0].find("This is another pattern"), 0u);
    EXPECT_EQ(assessment.marks, 0);
    EXPECT_EQ(assessment.of, 36);
    EXPECT_EQ(assessment.tasks.size(), 6u);
    // Beside the right pieces it is a piece too many.
    Pattern both = right_draft();
    both.pieces.push_back(skirt().pieces[0]);
    both.pieces.back().name = "skirt";
    const Assessment more = assess(side_exercise(), both);
    EXPECT_FALSE(more.is_another_pattern);
    EXPECT_EQ(lost(more), Lost{});
    EXPECT_TRUE(has_note(more, "\"skirt\" is none of the exercise's"));
}

TEST(classic_mistakes, outline_that_does_not_close_costs_the_check) {
    Pattern draft = right_draft();
    // The back's last edge stops short of where the first begins.
    Point& end = piece_of(draft, "back").outline.items.back().to;
    end = end + Vector{0, 2};
    EXPECT_EQ(lost_by(draft), (Lost{{"check", "noted"}}));
}

TEST(classic_mistakes, nothing_that_could_be_judged_says_why) {
    Pattern draft;
    draft.name = "a line";
    draft.pieces.emplace_back();
    draft.pieces[0].name = "a line";
    draft.pieces[0].outline.items.push_back({EdgeItem{"edge", StraightShape{}, 0}, {10, 0}});
    EXPECT_TRUE(assess(side_exercise(), draft).is_another_pattern);
    EXPECT_EQ(assess(side_exercise(), draft).marks, 0);
    EXPECT_NE(assess(side_exercise(), Pattern{}).unread, "");
    draft.pieces[0].outline.items.clear();
    EXPECT_NE(assess(side_exercise(), draft).unread, "");
}

TEST(classic_mistakes, numbers_that_are_none_and_names_of_nothing_say_where_they_stand) {
    const double infinite = std::numeric_limits<double>::infinity();
    for (const double bad : {std::nan(""), infinite, -infinite, 1e200, -1e200, 1.001e6}) {
        Pattern draft = right_draft();
        piece_of(draft, "front").outline.items[1].to.x = bad;
        const Assessment assessment = assess(side_exercise(), draft);
        EXPECT_EQ(assessment.unread.find("/pieces/0/outline/items/1/to/0: found "), 0u) << assessment.unread;
        EXPECT_EQ(assessment.unread_kind, UnreadKind::no_pattern);
        EXPECT_EQ(assessment.marks, 0);
    }
    Pattern draft = right_draft();
    piece_of(draft, "front").cut->fold = "nowhere";
    EXPECT_EQ(assess(side_exercise(), draft).unread.find("/pieces/0/cut/fold: found "), 0u);
    draft = right_draft();
    draft.seams.at(0).joins[0][0].piece = "sleeve";
    EXPECT_EQ(assess(side_exercise(), draft).unread.find("/seams/0/joins/0/piece: found "), 0u);
}

/// The straight item as three, of which the first and the last have names of their own.
Piece with_item_in_three(Piece piece, std::size_t item) {
    std::vector<OutlineItem>& items = piece.outline.items;
    const Point from = start_of_item(piece.outline, item);
    const Vector third = (1.0 / 3) * (items[item].to - from);
    const OutlineItem whole = items[item];
    items[item].as_edge()->edge += " begun";
    items[item].to = from + third;
    OutlineItem last = whole;
    last.as_edge()->edge += " ended";
    OutlineItem middle = whole;
    middle.to = from + 2 * third;
    const auto after = items.begin() + static_cast<std::ptrdiff_t>(item) + 1;
    items.insert(after, {middle, last});
    piece.notches.clear();
    piece.allowance.clear();
    return piece;
}

TEST(classic_mistakes, edges_that_the_exercise_does_not_know_are_judged_and_not_refused) {
    int looked_at = 0;
    for (const char* name : {"front", "back"}) {
        const Piece right = piece_named(side_exercise().finished, name);
        for (std::size_t i = 0; i < right.outline.items.size(); ++i) {
            const EdgeItem* edge = right.outline.items[i].as_edge();
            if (!edge || !std::holds_alternative<StraightShape>(edge->shape)) continue;
            Pattern draft = right_draft();
            draft.seams.clear();
            piece_of(draft, name) = with_item_in_three(right, i);
            piece_of(draft, name).cut.reset();
            if (!problems_of(draft).empty()) continue;  // the item was not its whole edge
            ++looked_at;
            const Assessment assessment = assess(side_exercise(), draft);
            EXPECT_EQ(assessment.unread, "") << name << ' ' << edge->edge;
            EXPECT_GT(assessment.marks, 0) << name << ' ' << edge->edge;
        }
    }
    EXPECT_GE(looked_at, 4);
}

TEST(classic_mistakes, other_dart_of_the_name_asked_for_is_judged_and_not_refused) {
    Pattern draft = right_draft();
    Piece& front = piece_of(draft, "front");
    for (OutlineItem& item : front.outline.items)
        if (DartItem* dart = item.as_dart()) dart->name = "mine";
    front.double_darts.push_back({"side dart", {60, 60}, {60, 160}, {{{55, 110}, {65, 110}}}, {}});
    ASSERT_EQ(UnsoundPattern(problems_of(draft)).what(), std::string());
    EXPECT_EQ(assess(side_exercise(), draft).unread, "");
    EXPECT_GT(assess(side_exercise(), draft).marks, 0);
}

using Request = std::vector<std::pair<std::string, std::string>>;

/// The workshop's bodice with one task for each operation, ten marks for its criteria in equal parts.
PreparedExercise bodice_exercise(const std::vector<Made>& steps, const std::vector<Criterion>& criteria) {
    Exercise exercise;
    exercise.name = "bodice";
    exercise.pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice.json");
    exercise.ladders = usual_ladders();
    for (const Made& each : steps) {
        std::vector<CriterionMarks> marks;
        for (const Criterion criterion : criteria)
            marks.push_back({criterion, 10.0 / static_cast<double>(criteria.size())});
        exercise.tasks.push_back({"task", "", OperationTask{each}, marks});
    }
    return prepared(exercise);
}

// Copied by hand to 2 mm: nothing done earns nothing, and what was done is not taken for what was handed out.
void expect_only_what_was_done_is_paid(const PreparedExercise& exercise) {
    const double most_mm = testing::real_between(0, 2);
    const Assessment copied = assess(exercise, testing::by_hand(exercise.exercise.pattern, most_mm));
    RC_LOG() << testing::explained(copied);
    RC_ASSERT(copied.marks == 0);
    const Assessment done = assess(exercise, testing::by_hand(exercise.finished, most_mm));
    RC_LOG() << testing::explained(done);
    RC_ASSERT(done.marks > 0);
    for (const JudgedCriterion& each : done.tasks[0].criteria)
        for (const JudgedLine& line : each.lines)
            RC_ASSERT(line.found_words != "as it was" && line.found_words != "as it was handed out");
}

// A dart that was to grow stands there already, and was the only thing paid for.
RC_GTEST_PROP(classic_mistakes, bodice_copied_by_hand_with_nothing_merged_earns_nothing, ()) {
    static const PreparedExercise exercise = bodice_exercise(
        {{"merge", {{"piece", "front"}, {"dart", "waist dart"}, {"with", "side dart"}}}},
        {Criterion::angle, Criterion::legs, Criterion::mouth, Criterion::pivot, Criterion::gone});
    expect_only_what_was_done_is_paid(exercise);
}

RC_GTEST_PROP(classic_mistakes, point_copied_by_hand_where_it_was_earns_nothing, ()) {
    static const PreparedExercise exercise =
        bodice_exercise({{"repoint", {{"piece", "front"}, {"dart", "waist dart"}, {"back_off", "4cm"}}}},
                        {Criterion::angle, Criterion::legs, Criterion::mouth, Criterion::pivot});
    expect_only_what_was_done_is_paid(exercise);
}

/// A panel on two folds with a dart in its slanting side; the corner at the second fold is meant.
PreparedExercise two_folds_exercise() {
    Piece panel;
    panel.name = "panel";
    panel.cut = Cut{1, "centre", false, {{"side", CornerIs::free}}, "top"};
    const auto edge = [](const char* name, Point to) {
        return OutlineItem{EdgeItem{name, StraightShape{}, 0}, to};
    };
    DartItem dart;
    dart.name = "side dart";
    dart.point = {110, 205};  // square to the side, from its middle
    dart.press = "hem";
    const Point a{209.5, 190};
    const Point b{210.5, 210};
    panel.outline.items = {edge("hem", {200, 0}),    edge("side", a),       {dart, b},
                           edge("side", {220, 400}), edge("top", {0, 400}), edge("centre", {0, 0})};
    panel.grain = Grain{{50, 100}, {50, 300}, "centre"};
    Exercise exercise;
    exercise.name = "two folds";
    exercise.pattern.name = "panel";
    exercise.pattern.pieces = {panel};
    exercise.ladders = usual_ladders();
    const Request request{{"piece", "panel"}, {"dart", "side dart"}, {"to", "side@100mm/hem"}};
    exercise.tasks = {{"lower it", "", OperationTask{{"pivot", request}}, {{Criterion::place, 4}}},
                      {"true", "", TrueTask{}, {{Criterion::check, 4}}}};
    return prepared(exercise);
}

// What the exercise says of corners holds for a draft on the same folds, and for no other.
TEST(classic_mistakes, corners_of_folds_are_excused_only_on_the_folds_of_the_exercise) {
    const PreparedExercise exercise = two_folds_exercise();
    Pattern draft = exercise.finished;
    Cut& cut = *draft.pieces[0].cut;
    cut.ends.clear();
    EXPECT_EQ(lost(assess(exercise, draft)), Lost{}) << "a student need not say that a corner is meant";
    std::swap(cut.fold, cut.second_fold);
    EXPECT_EQ(lost(assess(exercise, draft)), Lost{}) << "of two folds neither is the first";
    std::swap(cut.fold, cut.second_fold);
    cut.second_fold = "hem";
    EXPECT_TRUE(lost(assess(exercise, draft)).contains("check")) << "the side's other corner is not meant";
    cut.ends = {{"side", CornerIs::free}};
    EXPECT_FALSE(lost(assess(exercise, draft)).contains("check")) << "unless the draft says so";
    cut.second_fold.clear();
    cut.ends.clear();
    EXPECT_FALSE(lost(assess(exercise, draft)).contains("check")) << "there is no such corner";
}

// A dart that grew and gave up as much again is as it was, and as it was asked.
TEST(classic_mistakes, dart_that_is_to_end_as_it_was_before_is_no_fault) {
    Exercise exercise;
    exercise.name = "there and back";
    exercise.pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice.json");
    exercise.ladders = usual_ladders();
    const auto add = [&](const char* operation, const Request& request, Criterion criterion) {
        exercise.tasks.push_back({operation, "", OperationTask{{operation, request}}, {{criterion, 10}}});
    };
    add("merge", {{"piece", "front"}, {"dart", "waist dart"}, {"with", "side dart"}}, Criterion::gone);
    add("pivot",
        {{"piece", "front"}, {"dart", "side dart"}, {"to", "neck@50%"}, {"name", "d1"}, {"share", "50%"}},
        Criterion::place);
    add("merge", {{"piece", "front"}, {"dart", "side dart"}, {"with", "d1"}}, Criterion::gone);
    add("pivot",
        {{"piece", "front"}, {"dart", "d1"}, {"to", "armhole@50%"}, {"name", "d3"}, {"share", "50%"}},
        Criterion::angle);
    const PreparedExercise there_and_back = prepared(exercise);
    // Rounded wherever it lies: how a file rounds it is not to decide.
    for (int turn = 0; turn < 20; ++turn) {
        Pattern drawn = image({0.3 * turn, 1, false, {}}, there_and_back.finished);
        for (Piece& piece : drawn.pieces) {
            const auto round = [](Point& p) {
                p = {std::round(p.x * 1000) / 1000, std::round(p.y * 1000) / 1000};
            };
            round(piece.outline.start);
            for (OutlineItem& item : piece.outline.items) {
                round(item.to);
                if (DartItem* dart = item.as_dart()) round(dart->point);
            }
        }
        const Assessment assessment = assess(there_and_back, drawn);
        EXPECT_EQ(lost(assessment), Lost{}) << testing::explained(assessment);
    }
}

}  // namespace
}  // namespace dartwright
