#include "dartwright/drawing/decimals.hpp"

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

TEST(decimals, refuses_what_is_no_number) {
    EXPECT_THROW(fixed_decimals(std::numeric_limits<double>::quiet_NaN(), 2), std::invalid_argument);
    EXPECT_THROW(shortest_decimals(std::numeric_limits<double>::infinity(), 2), std::invalid_argument);
}

TEST(decimals, lengths_are_in_the_patterns_unit) {
    EXPECT_EQ(length_words(142.54, Unit::mm), "142.5 mm");
    EXPECT_EQ(length_words(142.54, Unit::cm), "14.25 cm");
    EXPECT_EQ(length_words(142.54, Unit::inch), "5.61 in");
    EXPECT_EQ(angle_words(radians(11.84)), "11.8\u00B0");
}

}  // namespace
}  // namespace dartwright
