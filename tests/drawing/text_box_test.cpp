#include "dartwright/drawing/text_box.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

TEST(text_box, widths_grow_with_size_and_letters) {
    EXPECT_GT(text_width("waist", 6), 6);
    EXPECT_NEAR(text_width("waist", 12), 2 * text_width("waist", 6), 1e-9);
    EXPECT_GT(text_width("waist dart", 6), text_width("waist", 6));
    EXPECT_GT(text_width("waist", 6, true), text_width("waist", 6))
        << "bold, though the same words were set plain";
    EXPECT_EQ(text_width("", 6), 0);
    EXPECT_GE(text_width("\xFF", 6), 0);  // what is not UTF-8 is measured as it will be written
}

// Which letters a face has depends on the machine; that words of other scripts have a width, and that it is
// not that of the same number of empty boxes, does not.
TEST(text_box, words_of_any_script_have_their_own_widths) {
    for (const char* words : {"перед", "εμπρός", "前", "पीछे", "الأمام"})
        EXPECT_GT(text_width(words, 6), 0) << words;
    // Arabic letters join: the word is narrower than its letters standing alone.
    EXPECT_LT(text_width("\u0628\u0628\u0628", 6), 3 * text_width("\u0628", 6));
}

TEST(text_box, anchors_move_the_box_along_the_words) {
    DrawnText text;
    text.words = "shoulder";
    text.at = {100, 50};
    const double width = text_width(text.words, text.size_mm);
    text.anchor = Anchor::start;
    EXPECT_NEAR(upright_box(box_of(text)).low.x, 100, 1e-9);
    text.anchor = Anchor::middle;
    EXPECT_NEAR(box_of(text).centre.x, 100, 1e-9);
    text.anchor = Anchor::end;
    EXPECT_NEAR(upright_box(box_of(text)).high.x, 100, 1e-9);
    EXPECT_NEAR(box_of(text).half_length, width / 2, 1e-9);
    EXPECT_LT(upright_box(box_of(text)).low.y, 50);  // tails reach below the base line
    text.angle_rad = pi / 2;
    EXPECT_NEAR(upright_box(box_of(text)).high.y, 50, 1e-9);
    EXPECT_NEAR(upright_box(box_of(text)).low.y, 50 - width, 1e-9);
}

TEST(text_box, breaks_a_word_that_is_wider_than_its_line) {
    const std::string word(40, 'x');
    const std::vector<std::string> lines = wrapped("a " + word + " b", 6, 50);
    std::string together;
    for (const std::string& line : lines) {
        EXPECT_LE(text_width(line, 6), 50);
        together += line;
    }
    EXPECT_EQ(together, "a" + word + " b");
    EXPECT_EQ(wrapped("前身頃", 6, 1), (std::vector<std::string>{"前", "身", "頃"}));
}

TEST(text_box, turned_boxes_meet_only_where_they_share_a_place) {
    const Vector slanted{std::sqrt(0.5), std::sqrt(0.5)};
    const TurnedBox level{{0, 0}, {1, 0}, 10, 2};
    // The upright boxes of the two overlap, they themselves do not.
    const TurnedBox beside{{18, 8.5}, slanted, 10, 2};
    EXPECT_FALSE(is_meeting(level, beside));
    EXPECT_TRUE(is_meeting(level, grown(beside, 2)));
    EXPECT_TRUE(is_meeting(level, level));
    const TurnedBox across{{3, 0}, {0, 1}, 10, 1};
    EXPECT_TRUE(is_meeting(level, across));
}

TEST(text_box, stretches_through_a_box_meet_it_without_an_end_in_it) {
    const TurnedBox box{{0, 0}, {1, 0}, 10, 2};
    EXPECT_TRUE(is_meeting(box, {0, -50}, {1, 50}));
    EXPECT_TRUE(is_meeting(box, {1, 1}, {2, 1}));
    EXPECT_FALSE(is_meeting(box, {-50, 3}, {50, 3}));
    EXPECT_FALSE(is_meeting(box, {8, 6}, {16, 0}));  // passes the corner by
    EXPECT_TRUE(is_meeting(box, {8, 3}, {12, -1}));  // cuts it off
}

TEST(text_box, keeps_a_length_with_its_unit) {
    const auto lines_of = [](const std::string& words) {
        std::vector<std::string> lines = wrapped(words, 6, 1 + text_width("6 9/32 in,", 6));
        std::string together;
        for (const std::string& line : lines) together += (together.empty() ? "" : " ") + line;
        EXPECT_EQ(together, words);
        return lines;
    };
    EXPECT_EQ(lines_of("back, 4.5 cm long"), (std::vector<std::string>{"back,", "4.5 cm", "long"}));
    EXPECT_EQ(lines_of("abcdef 6 9/32 in, c"), (std::vector<std::string>{"abcdef", "6 9/32 in,", "c"}));
    EXPECT_EQ(lines_of("an edge mm"), (std::vector<std::string>{"an edge", "mm"})) << "a name, no length";
}

}  // namespace
}  // namespace dartwright
