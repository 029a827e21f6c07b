#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"

#include <gtest/gtest.h>

#include <clocale>
#include <limits>
#include <stdexcept>

namespace dartwright {
namespace {

TEST(decimals, rounds_and_never_writes_minus_zero) {
    EXPECT_EQ(fixed_decimals(1.5, 2), "1.50");
    EXPECT_EQ(shortest_decimals(1.5, 2), "1.5");
    EXPECT_EQ(shortest_decimals(1200, 4), "1200");
    EXPECT_EQ(shortest_decimals(-0.00001, 4), "0");
    EXPECT_EQ(fixed_decimals(-0.004, 2), "0.00");
    EXPECT_EQ(fixed_decimals(-0.006, 2), "-0.01");
    EXPECT_EQ(shortest_decimals(1e300, 0).size(), 301u);
}

TEST(lengths, in_a_sentence_are_in_the_readers_unit) {
    EXPECT_EQ(measure_in_sentence(4.625 * 25.4, Unit::inch), "4 5/8 in");
    EXPECT_EQ(measure_in_sentence(116.4, Unit::inch), "about 4 19/32 in");
    EXPECT_EQ(measure_in_sentence(116.44, Unit::cm), "116.4 mm");
    EXPECT_EQ(difference_in_sentence(2.9, Unit::inch), "0.114 in");
    EXPECT_EQ(difference_in_sentence(0.5, Unit::inch), "0.02 in");
    EXPECT_EQ(difference_in_sentence(57.15, Unit::inch), "2.25 in");
    EXPECT_EQ(difference_in_sentence(0, Unit::inch), "0 in");
    EXPECT_EQ(difference_in_sentence(2.9, Unit::mm), "2.9 mm");
    EXPECT_EQ(difference_in_sentence(0.35, Unit::cm), "0.35 mm");
}

TEST(decimals, refuses_what_is_no_number) {
    EXPECT_THROW(fixed_decimals(std::numeric_limits<double>::quiet_NaN(), 2), std::invalid_argument);
    EXPECT_THROW(shortest_decimals(std::numeric_limits<double>::infinity(), 2), std::invalid_argument);
}

TEST(decimals, lengths_are_in_the_patterns_unit) {
    EXPECT_EQ(length_words(142.54, Unit::mm), "142.5 mm");
    EXPECT_EQ(length_words(142.54, Unit::cm), "14.25 cm");
    EXPECT_EQ(length_words(142.54, Unit::inch), "5.61 in");
    EXPECT_EQ(angle_words_of_degrees(11.84), "11.8\u00B0");
}

// A yard is 914.4 mm, an eighth of it 114.3 mm: by its definition.
TEST(decimals, cloth_is_bought_in_steps) {
    EXPECT_EQ(bought_words(443.2, Unit::cm), "45 cm");
    EXPECT_EQ(bought_words(450, Unit::cm), "45 cm");
    EXPECT_EQ(bought_words(450.1, Unit::mm), "500 mm");
    EXPECT_EQ(bought_words(114.3, Unit::inch), "1/8 yard");
    EXPECT_EQ(bought_words(114.4, Unit::inch), "1/4 yard");
    EXPECT_EQ(bought_words(914.4, Unit::inch), "1 yard");
    EXPECT_EQ(bought_words(1200, Unit::inch), "1 3/8 yards");
    EXPECT_EQ(bought_words(1828.8, Unit::inch), "2 yards");
}

// 5/8 in is 15.875 mm, 1/32 in 0.79375 mm: by the definition of the inch.
TEST(decimals, lengths_at_the_table_are_no_finer_than_a_ruler) {
    EXPECT_EQ(ruler_words(142.54, Unit::mm), "143 mm");
    EXPECT_EQ(ruler_words(142.54, Unit::cm), "14.3 cm");
    EXPECT_EQ(ruler_words(15.875, Unit::inch), "5/8 in");
    EXPECT_EQ(ruler_words(25.4 * 5 + 15.875, Unit::inch), "5 5/8 in");
    EXPECT_EQ(ruler_words(25.4 * 3 + 0.39, Unit::inch), "3 in") << "under half of 1/32";
    EXPECT_EQ(ruler_words(25.4 * 3 + 0.40, Unit::inch), "3 1/32 in");
    EXPECT_EQ(ruler_words(25.4 * 3.999, Unit::inch), "4 in");
    EXPECT_EQ(ruler_words(0, Unit::inch), "0 in");
    EXPECT_EQ(ruler_figure(142.54, Unit::cm), "14.3");
}

TEST(decimals, widths_are_fractions_where_they_are_and_about_where_not) {
    EXPECT_EQ(width_words(15, Unit::cm), "1.5\u00A0cm");
    EXPECT_EQ(width_words(15.875, Unit::inch), "5/8\u00A0in");
    EXPECT_EQ(width_words(6.125 * 25.4, Unit::inch), "6\u00A01/8\u00A0in");
    EXPECT_EQ(width_words(20, Unit::inch), "about\u00A025/32\u00A0in");
    EXPECT_EQ(width_words(15.88, Unit::inch), "5/8\u00A0in") << "rounded in a file";
}

}  // namespace
}  // namespace dartwright
