// Whose left and right, and where a person presses a dart to, in pieces as they come and as `open` leaves
// them.

#include "dartwright/pattern/whose_sides.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/press_name.hpp"

namespace dartwright {
namespace {

Pattern bodice() {
    return read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/workshop/chorus-bodice.json");
}

TEST(whose_sides, are_said_of_pieces_that_have_sides) {
    EXPECT_FALSE(whose_sides(bodice(), bodice().pieces[0]));
    const Pattern as_drawn = open(bodice(), {"front"}).pattern;
    EXPECT_EQ(whose_sides(as_drawn, as_drawn.pieces[0]), WhoseSides::as_drawn);
    const Pattern worn = open(bodice(), {"front", Worn::front}).pattern;
    EXPECT_EQ(whose_sides(worn, worn.pieces[0]), WhoseSides::wearers);
    EXPECT_FALSE(whose_sides(worn, worn.pieces[1]));
    Pattern by_hand = as_drawn;
    by_hand.made.clear();
    EXPECT_EQ(whose_sides(by_hand, by_hand.pieces[0]), WhoseSides::not_said);
    EXPECT_EQ(words_of(WhoseSides::wearers), "left and right are the wearer's");
    EXPECT_EQ(words_of(WhoseSides::as_drawn), "left and right as drawn");
}

TEST(whose_sides, take_a_name_apart) {
    EXPECT_EQ(sided_name("left side").side, "left");
    EXPECT_EQ(sided_name("left side").rest, "side");
    EXPECT_EQ(sided_name("right waist dart").rest, "waist dart");
    for (const char* plain : {"side", "leftover", "left ", "left", "right", "", "centre left"})
        EXPECT_EQ(sided_name(plain).side, "") << plain;
}

TEST(press_name, is_the_edge_that_press_names) {
    const Piece front = bodice().pieces[0];
    EXPECT_EQ(press_name(front, dart_named(front, "waist dart")), "centre front");
    EXPECT_EQ(press_name(front, dart_named(front, "side dart")), "waist");
    Piece undecided = front;
    undecided.outline.items[dart_named(front, "side dart")].as_dart()->press.clear();
    EXPECT_EQ(press_name(undecided, dart_named(front, "side dart")), "");
    EXPECT_THROW(press_name(front, 0), std::invalid_argument);
}

// The fold is a marked line in the whole: a dart that was pressed to it still is.
TEST(press_name, is_the_centre_line_across_the_former_fold) {
    for (const auto& worn : {std::optional<Worn>{}, std::optional<Worn>{Worn::front}}) {
        const Piece front = open(bodice(), {"front", worn}).pattern.pieces[0];
        for (const char* side : {"left ", "right "}) {
            const std::string name = side;
            EXPECT_EQ(press_name(front, dart_named(front, name + "waist dart")), "centre front");
            EXPECT_EQ(press_name(front, dart_named(front, name + "side dart")), name + "waist");
        }
    }
}

// A dart that is moved across the centre divides the line that marks it.
TEST(press_name, is_the_centre_line_in_parts_too) {
    const Pattern block =
        read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/blocks/close-fitting.json");
    PivotRequest across{"front", "left bust dart", "right neck@50%", {}, {}, "right side", "", "", ""};
    const Piece front = pivot(open(block, {"front"}).pattern, across).pattern.pieces[0];
    const auto parts = std::count_if(front.marks.begin(), front.marks.end(),
                                     [](const Mark& mark) { return mark.name == "centre front"; });
    ASSERT_GE(parts, 2);
    EXPECT_EQ(press_name(front, dart_named(front, "left waist dart")), "centre front");
}

TEST(press_name, has_a_word_for_a_centre_that_is_not_marked) {
    Piece front = open(bodice(), {"front"}).pattern.pieces[0];
    std::erase_if(front.marks, [](const Mark& mark) { return mark.name == "centre front"; });
    EXPECT_EQ(press_name(front, dart_named(front, "left waist dart")), "the centre line");
}

TEST(press_name, of_a_double_dart_goes_by_its_half) {
    Pattern pattern = bodice();
    pattern.pieces[0].double_darts.push_back(
        {"inner", {40, 50}, {40, 120}, {{{35, 80}, {45, 80}}}, "centre front"});
    const Piece front = open(pattern, {"front"}).pattern.pieces[0];
    ASSERT_EQ(front.double_darts.size(), 2u);
    for (const DoubleDart& dart : front.double_darts) EXPECT_EQ(press_name(front, dart), "centre front");
}

}  // namespace
}  // namespace dartwright
