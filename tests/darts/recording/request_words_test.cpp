// Numbers of a request as words: the same number comes back.

#include "dartwright/darts/recording/request_words.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/geometry/point.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {
namespace {

TEST(request_words, are_short_where_the_number_was) {
    EXPECT_EQ(words_of_length(25), "25mm");
    EXPECT_EQ(words_of_point({12.5, -3}), "12.5mm,-3mm");
    EXPECT_EQ(words_of_share(0.5), "50%");
    EXPECT_EQ(words_of_share(0.07), "7%");
    EXPECT_EQ(words_of_angle(radians(8)), "8");
    EXPECT_EQ(words_of_angle(radians(6.55)), "6.55");
}

TEST(request_words, have_no_exponent) {
    EXPECT_EQ(words_of_length(1e-5), "0.00001mm");
    EXPECT_EQ(parse_share(words_of_share(1e-9)), 1e-9);
}

RC_GTEST_PROP(RequestWords, GiveTheSameNumberBack, ()) {
    const double number = log_between(1e-9, 1) * real_between(0.1, 1);
    RC_ASSERT(parse_length(words_of_length(number)) == number);
    RC_ASSERT(parse_share(words_of_share(number)) == number);
    const double rad = radians(number * 90);
    RC_ASSERT(radians(parse_angle_deg(words_of_angle(rad))) == rad);
}

RC_GTEST_PROP(RequestWords, GiveAnyAngleBackToTheLastPlace, ()) {
    const double rad = real_between(1e-3, 3) / 3;
    RC_ASSERT(std::abs(radians(parse_angle_deg(words_of_angle(rad))) - rad) <= 3e-16 * rad);
}

}  // namespace
}  // namespace dartwright::testing
