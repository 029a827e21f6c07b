#include "dartwright/checks/measure_line.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

#include "checks/sample_patterns.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

Mark line_mark(const std::string& name, std::vector<Point> points) {
    return {LineMark{std::move(points)}, name};
}

TEST(measure_line, of_a_run_doubles_for_the_fold_and_for_a_mirrored_pair) {
    Pattern pattern = sample::skirt({200, 400}, {180, 400});
    pattern.pieces[1].cut = Cut{2, "", false, {}};
    const MeasuredLine hem = measure_line(pattern, "hem");
    ASSERT_EQ(hem.pieces.size(), 2u);
    EXPECT_EQ(hem.pieces[0].copies, 2);
    EXPECT_NEAR(hem.pieces[1].total_mm, 360, 1e-9);
    EXPECT_NEAR(hem.total_mm, 760, 1e-9);
    pattern.pieces[1].cut->same = true;
    EXPECT_NEAR(measure_line(pattern, "hem").total_mm, 580, 1e-9);
}

TEST(measure_line, of_the_fold_itself_counts_once) {
    Pattern pattern = sample::skirt();
    EXPECT_NEAR(measure_line(pattern, "centre front").total_mm, 400, 1e-9);
    pattern.pieces[0].marks = {line_mark("fold mark", {{0.3, 50}, {0.3, 150}})};
    EXPECT_NEAR(measure_line(pattern, "fold mark").total_mm, 100, 1e-9);
}

TEST(measure_line, closes_darts_of_a_run) {
    const Pattern pattern = sample::bodice();
    const Outline& outline = pattern.pieces[0].outline;
    const double once = length_of_item(outline, 0) + length_of_item(outline, 2);
    EXPECT_NEAR(measure_line(pattern, "waist").total_mm, 2 * once, 1e-9);
}

TEST(measure_line, of_a_mark_leaves_out_wedges_and_what_lies_outside) {
    Pattern pattern = sample::bodice();
    // Half way up the dart its wedge is 20 mm wide; the line reaches 50 mm beyond the side.
    pattern.pieces[0].marks = {line_mark("hip line", {{0, 75}, {250, 75}})};
    EXPECT_NEAR(measure_line(pattern, "hip line").pieces.at(0).length_mm, 180, 1e-9);
    pattern.pieces[0].double_darts = {{"fish", {40, 25}, {40, 125}, {{{35, 75}, {45, 75}}}, ""}};
    EXPECT_NEAR(measure_line(pattern, "hip line").pieces.at(0).length_mm, 170, 1e-9);
}

TEST(measure_line, adds_lines_of_one_name_and_bends) {
    Pattern pattern = sample::bodice();
    pattern.pieces[0].marks = {line_mark("guide", {{20, 200}, {50, 240}, {50, 260}}),
                               line_mark("guide", {{150, 200}, {160, 200}})};
    EXPECT_NEAR(measure_line(pattern, "guide").pieces.at(0).length_mm, 80, 1e-9);
}

TEST(measure_line, names_the_lines_that_exist) {
    try {
        measure_line(sample::skirt(), "bust line");
        FAIL();
    } catch (const UnknownName& unknown) {
        EXPECT_EQ(unknown.known,
                  (std::vector<std::string>{"hem", "side", "waist", "centre front", "centre back"}));
    }
}

TEST(measure_line, refuses_a_piece_that_does_not_close) {
    Pattern pattern = sample::skirt();
    pattern.pieces[0].outline.items.back().to = {0, 9};
    EXPECT_THROW(measure_line(pattern, "hem"), Impossible);
    EXPECT_NEAR(measure_line(pattern, "centre back").total_mm, 400, 1e-9);
}

TEST(measure_level, is_square_to_the_grain_through_the_place) {
    Pattern pattern = sample::bodice();
    const double side_to_75 = 340 - 65;
    const std::string place = "side@" + std::to_string(side_to_75) + "/top";
    const MeasuredLine level = measure_level(pattern, place);
    EXPECT_NEAR(level.pieces.at(0).length_mm, 180, 1e-9);
    EXPECT_NEAR(level.total_mm, 360, 1e-9);
    // A grain along the bias turns the line by 45 degrees.
    pattern.pieces[0].grain = Grain{{30, 50}, {130, 150}, ""};
    EXPECT_NEAR(measure_level(pattern, "side@50/top").pieces.at(0).length_mm, 50 * std::sqrt(2.0), 1e-9);
}

TEST(measure_level, needs_a_grain_and_a_known_edge) {
    Pattern pattern = sample::skirt();
    EXPECT_THROW(measure_level(pattern, "sleeve@5/hem"), UnknownName);
    EXPECT_THROW(measure_level(pattern, "side@5000/hem"), BeyondTheRun);
    EXPECT_THROW(measure_level(pattern, "side@5"), BadWords);
    pattern.pieces[0].grain.reset();
    EXPECT_THROW(measure_level(pattern, "side@50/hem"), Impossible);
}

}  // namespace
}  // namespace dartwright
