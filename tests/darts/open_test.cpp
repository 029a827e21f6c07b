// Unfolding by example: names, marks, seams, and what is refused.

#include "dartwright/darts/open.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

Pattern fixture(const std::string& name) {
    return read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR "/fixtures/") + name);
}
Pattern block() {
    return fixture("blocks/close-fitting.json");
}

using Names = std::vector<std::string>;

TEST(open, leaves_blocks_and_bodices_true) {
    for (const char* name :
         {"blocks/close-fitting.json", "blocks/three-measure.json", "workshop/chorus-bodice.json"}) {
        const Pattern opened = open(fixture(name), {"front"}).pattern;
        const CheckReport report = check(opened);
        EXPECT_TRUE(report.passed) << name;
        EXPECT_EQ(report.findings.size(), check(fixture(name)).findings.size()) << name;
    }
}

TEST(open, keeps_what_is_measured_round_the_body) {
    const Pattern opened = open(block(), {"front"}).pattern;
    EXPECT_NEAR(measure_line(block(), "bust line").total_mm, measure_line(opened, "bust line").total_mm,
                1e-6);
    EXPECT_NEAR(measure_line(opened, "centre front").total_mm, 353, 1e-6);
}

// The block's front is drawn with the fold on its right and the arrow up.
TEST(open, names_left_and_right_as_the_piece_lies) {
    const OpenResult result = open(block(), {"front"});
    EXPECT_EQ(result.account.drawn_side, "left");
    Names runs;
    for (const auto& run : runs_of(result.pattern.pieces[0].outline)) runs.push_back(run.edge);
    EXPECT_EQ(runs, (Names{"left neck", "left shoulder", "left armhole", "left side", "left waist",
                           "right waist", "right side", "right armhole", "right shoulder", "right neck"}));
    Pattern upside_down = block();
    std::swap(upside_down.pieces[0].grain->from, upside_down.pieces[0].grain->to);
    EXPECT_EQ(open(upside_down, {"front"}).account.drawn_side, "right");
}

TEST(open, presses_towards_the_middle_across_it) {
    const Pattern opened = open(block(), {"front"}).pattern;
    const Piece& front = opened.pieces[0];
    EXPECT_EQ(front.outline.items[dart_named(front, "left waist dart")].as_dart()->press, "right waist");
    EXPECT_EQ(front.outline.items[dart_named(front, "right bust dart")].as_dart()->press, "left neck");
}

TEST(open, makes_one_line_of_what_meets_at_the_fold) {
    const Piece front = open(block(), {"front"}).pattern.pieces[0];
    Names marks;
    for (const Mark& mark : front.marks) marks.push_back(mark.name);
    EXPECT_EQ(marks, (Names{"bust line", "left bust point", "right bust point", "centre front"}));
    const auto& line = std::get<LineMark>(front.marks[0].what).points;
    ASSERT_EQ(line.size(), 2u);
    EXPECT_NEAR(distance(line[0], line[1]), 510, 1e-9);
}

TEST(open, makes_two_seams_of_one_and_leaves_others) {
    const OpenResult result = open(block(), {"front"});
    Names seams;
    for (const Seam& seam : result.pattern.seams) seams.push_back(seam.name);
    EXPECT_EQ(seams, (Names{"left side", "right side", "left shoulder", "right shoulder", "centre back"}));
    const Seam& right = result.pattern.seams[1];
    EXPECT_EQ(right.joins[0][0], (SeamPart{"front", "right side", "right waist", false}));
    EXPECT_EQ(right.joins[1][0], (SeamPart{"back", "side", "waist", true}));
}

// Both pieces on the fold, both opened: each seam of one half is with one half, and there are two in all.
TEST(open, does_not_double_a_seam_twice) {
    Pattern pattern = block();
    Piece& back = pattern.pieces[1];
    back.cut = Cut{1, "centre back", false, {}};
    std::erase_if(back.notches, [](const Notch& notch) { return notch.edge == "centre back"; });
    pattern.seams.pop_back();
    const Pattern opened = open(open(pattern, {"back"}).pattern, {"front"}).pattern;
    ASSERT_EQ(opened.seams.size(), 4u);
    const SeamPart& front = opened.seams[0].joins[0][0];
    const SeamPart& with = opened.seams[0].joins[1][0];
    // Drawn halves together: the front's is its left, the back's its right, as they lie face up.
    EXPECT_EQ(front.edge, "left side");
    EXPECT_EQ(with.edge, "right side");
    EXPECT_FALSE(front.mirrored || with.mirrored);
    EXPECT_EQ(opened.seams[1].joins[0][0].edge, "right side");
    EXPECT_EQ(opened.seams[1].joins[1][0].edge, "left side");
    EXPECT_TRUE(check(opened).passed);
}

TEST(open, says_words_about_corners_anew) {
    Pattern pattern = block();
    pattern.seams[1].ends = {{"neck", CornerIs::free}};
    const Pattern opened = open(pattern, {"front"}).pattern;
    EXPECT_EQ(opened.seams[2].ends,
              (std::map<std::string, CornerIs>{{"left neck", CornerIs::free}, {"neck", CornerIs::free}}));
}

TEST(open, lets_a_dart_cross_the_middle) {
    const Pattern opened = open(block(), {"front"}).pattern;
    PivotRequest request{"front", "left bust dart", "right neck@50%", {}, {}, "right side", "", "", ""};
    const Pattern moved = pivot(opened, request).pattern;
    // The bust dart's legs, rounded in the file, differ by 0.0005 mm and come to their mean.
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(*check(moved).seams[i].difference, *check(opened).seams[i].difference, 1e-3);
    EXPECT_NEAR(cloth_area(moved.pieces[0]), 2 * cloth_area(block().pieces[0]), 0.02);
}

TEST(open, keeps_a_double_dart_along_the_fold_as_one) {
    Pattern pattern = block();
    Piece& front = pattern.pieces[0];
    front.double_darts.push_back({"middle", {490, 100}, {490, 200}, {{{485, 150}, {495, 150}}}, ""});
    front.double_darts.push_back({"inner", {400, 50}, {400, 120}, {{{395, 80}, {405, 80}}}, "centre front"});
    const Piece opened = open(pattern, {"front"}).pattern.pieces[0];
    ASSERT_EQ(opened.double_darts.size(), 3u);
    EXPECT_EQ(opened.double_darts[0].name, "middle");
    EXPECT_EQ(opened.double_darts[1].name, "left inner");
    EXPECT_EQ(opened.double_darts[1].press, "right waist");
    EXPECT_EQ(opened.double_darts[2].name, "right inner");
    EXPECT_NEAR(opened.double_darts[2].from.x, 580, 1e-9);
    front.double_darts[0].widest[1] = {500, 150};
    EXPECT_THROW(open(pattern, {"front"}), Impossible);
}

// Whoever wears a front stands before you: his left is on your right. Turned over, or on a back, it is not.
TEST(open, names_left_and_right_after_the_wearer) {
    const auto drawn_side = [](std::optional<Worn> worn, std::optional<SideUp> side_up) {
        return open(block(), {"front", worn, side_up}).account.drawn_side;
    };
    // The half of the block's front that is drawn lies on the left of its fold.
    EXPECT_EQ(drawn_side({}, {}), "left");
    EXPECT_EQ(drawn_side(Worn::front, {}), "right");
    EXPECT_EQ(drawn_side(Worn::front, SideUp::right), "right");
    EXPECT_EQ(drawn_side(Worn::front, SideUp::wrong), "left");
    EXPECT_EQ(drawn_side(Worn::back, {}), "left");
    EXPECT_EQ(drawn_side(Worn::back, SideUp::wrong), "right");
}

TEST(open, heeds_what_the_piece_says_of_how_it_is_worn) {
    Pattern pattern = block();
    pattern.pieces[0].worn = Worn::front;
    const OpenResult result = open(pattern, {"front"});
    EXPECT_EQ(result.account.drawn_side, "right");
    EXPECT_TRUE(result.account.is_as_worn);
    EXPECT_EQ(result.pattern.pieces[0].worn, Worn::front);
    EXPECT_EQ(result.pattern.made.back().request,
              (std::vector<std::pair<std::string, std::string>>{{"piece", "front"}, {"worn", "front"}}));
    pattern.pieces[0].side_up = SideUp::wrong;
    const OpenResult turned = open(pattern, {"front"});
    EXPECT_EQ(turned.account.drawn_side, "left");
    EXPECT_EQ(turned.pattern.pieces[0].side_up, SideUp::wrong);
    EXPECT_THROW(open(pattern, {"front", Worn::back}), BadWords);
    EXPECT_THROW(open(pattern, {"front", {}, SideUp::right}), BadWords);
    EXPECT_THROW(open(block(), {"front", {}, SideUp::right}), BadWords);
}

// A part of a front is a front.
TEST(open, is_told_by_the_parts_of_a_separated_piece_how_they_are_worn) {
    Pattern pattern = block();
    pattern.pieces[0].worn = Worn::front;
    pattern.pieces[0].side_up = SideUp::wrong;
    CloseSeamRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.with = "bust dart";
    const Pattern parts = close_as_seam(pattern, request).pattern;
    ASSERT_EQ(parts.pieces.size(), 3u);
    std::size_t fronts = 0;
    for (const Piece& piece : parts.pieces)
        if (piece.worn == Worn::front && piece.side_up == SideUp::wrong) ++fronts;
    EXPECT_EQ(fronts, 2u);
}

TEST(open, says_once_that_left_and_right_are_as_drawn) {
    const auto notes_about_sides = [](const OpenResult& result) {
        return std::count_if(result.account.notes.begin(), result.account.notes.end(),
                             [](const std::string& note) {
                                 return note.find("left and right are as drawn") != std::string::npos;
                             });
    };
    EXPECT_EQ(notes_about_sides(open(block(), {"front"})), 1);
    EXPECT_EQ(notes_about_sides(open(block(), {"front", Worn::front})), 0);
    EXPECT_FALSE(open(block(), {"front"}).pattern.pieces[0].worn);
}

TEST(open, replays_old_entries_to_the_old_names) {
    const Made old{"open", {{"piece", "front"}}};
    Pattern pattern = block();
    for (const bool says_worn : {false, true}) {
        if (says_worn) pattern.pieces[0].worn = Worn::front;
        const Piece opened = replay(pattern, {old}).pattern.pieces[0];
        EXPECT_EQ(opened.outline, open(block(), {"front"}).pattern.pieces[0].outline);
        EXPECT_FALSE(opened.worn) << "names that are as drawn do not pass for the wearer's";
    }
    pattern.pieces[0].worn = Worn::back;
    EXPECT_EQ(replay(pattern, {old}).pattern.pieces[0].worn, Worn::back) << "a back's are the same";
}

TEST(open, replays_new_entries_whatever_the_block_says) {
    for (const auto& worn :
         {std::optional<Worn>{}, std::optional<Worn>{Worn::front}, std::optional<Worn>{Worn::back}}) {
        for (const auto& side : {std::optional<SideUp>{}, std::optional<SideUp>{SideUp::wrong}}) {
            if (side && !worn) continue;
            const Pattern opened = open(block(), {"front", worn, side}).pattern;
            const Pattern again = replay(block(), opened.made).pattern;
            EXPECT_EQ(again.pieces, opened.pieces);
            EXPECT_EQ(again.made, opened.made);
            EXPECT_EQ(performed(block(), opened.made[0]).made, opened.made);
        }
    }
    EXPECT_THROW(replay(block(), {{"open", {{"piece", "front"}, {"worn", "side"}}}}), BadWords);
    EXPECT_THROW(replay(block(), {{"open", {{"piece", "front"}, {"worn", "front"}, {"side_up", "left"}}}}),
                 BadWords);
}

TEST(open, refuses_what_cannot_be_unfolded) {
    EXPECT_THROW(open(block(), {"back"}), Impossible);
    EXPECT_THROW(open(block(), {"sleeve"}), UnknownName);
    Pattern bent = block();
    bent.pieces[0].outline.items[3].as_edge()->shape = CubicShape{{{{485, 100}, {485, 250}}}};
    EXPECT_THROW(open(bent, {"front"}), Impossible);
    const Pattern in_fold = open(block(), {"front"}).pattern;
    EXPECT_THROW(open(in_fold, {"front"}), Impossible);
    Pattern sewn = block();
    sewn.seams[0].joins[0][0] = {"front", "centre front", "neck", false};
    EXPECT_THROW(open(sewn, {"front"}), Impossible);
}

}  // namespace
}  // namespace dartwright
