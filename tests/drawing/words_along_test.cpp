// Places for words along a line.

#include "dartwright/drawing/words_along.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "dartwright/drawing/table_look.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

DrawnText words_of_size(double size_mm, const std::string& words) {
    DrawnText text;
    text.words = words;
    text.size_mm = size_mm;
    return text;
}

// In a neck or an armhole the line comes towards the ends of the words; the place liked best, in the middle,
// is to be had there too.
RC_GTEST_PROP(WordsAlong, MiddleOfAHollowLineIsClearOfIt, ()) {
    const double radius = testing::real_between(60, 600);
    const double turn = testing::real_between(0.5, 2);
    std::vector<Point> arc;
    constexpr int steps = 200;
    for (int i = 0; i <= steps; ++i)
        arc.push_back({radius * std::cos(turn * i / steps), radius * std::sin(turn * i / steps)});
    const std::vector<DrawnText> lines =
        in_lines(words_of_size(look::edge_size, "a neck 11.07 cm"), std::size_t(*testing::evenly(1, 3)));
    // Words much longer than that stand across the hollow and not in it.
    const double width = size_of_block(lines).width;
    RC_PRE(width < 0.6 * radius && width < 0.8 * radius * turn);
    TakenPlaces taken;
    for (std::size_t i = 1; i < arc.size(); ++i) taken.add(arc[i - 1], arc[i]);
    // The arc turns left, so that its left side is the hollow one.
    for (const LineSide side : {LineSide::left, LineSide::right})
        RC_ASSERT(taken.is_clear(block_along(arc, lines, {2.2}, side).label(0), look::clear_of_lines));
}

TEST(in_lines, are_as_many_as_asked_and_of_about_one_width) {
    const DrawnText words =
        words_of_size(5, "ease in 0.96 cm between the first notch and the third notch, from the armhole");
    const double whole = text_width(words.words, words.size_mm);
    for (const std::size_t count : {1u, 2u, 3u, 4u}) {
        const std::vector<DrawnText> lines = in_lines(words, count);
        EXPECT_EQ(lines.size(), count);
        std::string together;
        for (const DrawnText& line : lines) {
            together += (together.empty() ? "" : " ") + line.words;
            EXPECT_LE(text_width(line.words, line.size_mm), 1.4 * whole / static_cast<double>(count));
        }
        EXPECT_EQ(together, words.words);
    }
    EXPECT_EQ(in_lines(words_of_size(5, "fold"), 3).size(), 1u);
}

}  // namespace
}  // namespace dartwright
