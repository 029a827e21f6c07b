// Numbers as messages write them.

#include "dartwright/words/lengths.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

TEST(words_of_checks, a_half_is_written_alike_whatever_rounding_made_of_it) {
    for (const double half : {11.25, 11.35, 0.125, 0.135, 0.005, 0.995, 1.0, 250.45})
        for (const double off : {-1e-9, -1e-12, 1e-12, 1e-9})
            EXPECT_EQ(mm_in_sentence(half + off), mm_in_sentence(half)) << half << ' ' << off;
    EXPECT_EQ(mm_in_sentence(11.26), "11.3 mm");
    EXPECT_EQ(mm_in_sentence(0.004), "0 mm");
    EXPECT_EQ(degrees_in_sentence(0.25), "0.25 degrees");
}

}  // namespace
}  // namespace dartwright
