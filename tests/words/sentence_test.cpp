#include "dartwright/words/sentence.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "dartwright/pattern/place.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

TEST(sentence, tells_its_lengths_in_the_readers_unit) {
    const Sentence said = "the legs of " + Sentence("\"waist dart\"") + " differ by " + difference_told(2.2) +
                          "; the longer is " + measure_told(116.44);
    EXPECT_EQ(said.in(Unit::mm), "the legs of \"waist dart\" differ by 2.2 mm; the longer is 116.4 mm");
    EXPECT_EQ(said.in(Unit::cm), said.in(Unit::mm));
    EXPECT_EQ(said.in(Unit::inch),
              "the legs of \"waist dart\" differ by 0.087 in; the longer is about 4 19/32 in");
}

TEST(sentence, tells_a_limit_that_will_do) {
    EXPECT_EQ(most_told(12.29).in(Unit::mm), "12.2 mm");
    EXPECT_EQ(most_told(12.2).in(Unit::mm), "12.2 mm");
    EXPECT_EQ(most_told(12.29, 0).in(Unit::mm), "12 mm");
    EXPECT_EQ(least_told(12.21).in(Unit::mm), "12.3 mm");
    EXPECT_EQ(most_told(12.29).in(Unit::inch), "15/32 in");
    EXPECT_EQ(least_told(12.29).in(Unit::inch), "1/2 in");
    EXPECT_EQ(most_told(0.5).in(Unit::inch), "0.019 in");
    EXPECT_EQ(least_told(430.0000009, 0).in(Unit::mm), "431 mm") << "430 was tried, and is too little";
    EXPECT_EQ(within_told(8.2996 * 25.4).in(Unit::inch), "8.299 in");
    EXPECT_EQ(within_told(210.80984).in(Unit::mm), "210.809840 mm");
    EXPECT_EQ(on_edge_told(508).in(Unit::mm) + "/" + on_edge_told(508).in(Unit::inch), "508/20in");
    EXPECT_EQ(difference_told(0.514, by_size).in(Unit::mm), "0.51 mm");
    EXPECT_EQ(measure_told(12.34, by_size).in(Unit::cm), "12.3 mm");
}

TEST(sentence, tells_what_was_asked_as_it_was_asked) {
    EXPECT_EQ(asked_told(12.25).in(Unit::mm), "12.25 mm");
    EXPECT_EQ(asked_told(0.02 * 25.4).in(Unit::inch), "0.02 in");
    EXPECT_EQ(asked_told(1).in(Unit::inch), "0.03937 in");
    EXPECT_EQ(place_told(391.5, 170).in(Unit::mm), "(391.5, 170.0) mm");
    EXPECT_EQ(place_told(391.5, 170).in(Unit::inch), "(15.413, 6.693) in");
}

TEST(sentence, tells_any_number) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    for (const Unit unit : {Unit::mm, Unit::inch}) {
        EXPECT_EQ(asked_told(none).in(unit), "nan mm");
        EXPECT_EQ(measure_told(std::numeric_limits<double>::infinity()).in(unit), "inf mm");
        EXPECT_EQ(place_told(0, none).in(unit), "(0.0, nan) mm");
    }
}

TEST(sentence, may_be_put_behind_itself_and_be_empty) {
    Sentence said = "twice " + measure_told(1) + " ";
    said += said;
    EXPECT_EQ(said.in(Unit::mm), "twice 1.0 mm twice 1.0 mm ");
    EXPECT_TRUE(Sentence().empty());
    EXPECT_TRUE((Sentence("") + "").empty());
    EXPECT_FALSE(measure_told(0).empty());
}

// Whoever follows the remedy must not be refused again: what is told is read as it would be on the command
// line.
RC_GTEST_PROP(Sentence, ALimitToldIsWithinTheLimit, ()) {
    const double limit_mm = std::pow(10, *testing::evenly(-1300, 3000) / 1000.0);
    const int decimals = *testing::evenly(0, 3);
    // Limits are computed: the last bits are no part of them.
    const double grain_mm = 1e-5;
    for (const Unit unit : {Unit::mm, Unit::inch}) {
        const double most = parse_length(most_told(limit_mm, decimals).in(unit));
        const double least = parse_length(least_told(limit_mm, decimals).in(unit));
        RC_ASSERT(most <= limit_mm + grain_mm);
        RC_ASSERT(least >= limit_mm - grain_mm);
        const double step_mm = unit == Unit::mm ? std::pow(10, -decimals) : 25.4 / 32;
        RC_ASSERT(most > limit_mm - step_mm - grain_mm);
        RC_ASSERT(least < limit_mm + step_mm + grain_mm);
    }
}

// As a place that is told is typed again.
RC_GTEST_PROP(Sentence, ADistanceToldIsReadAsIt, ()) {
    const double distance_mm = std::pow(10, *testing::evenly(-1300, 3000) / 1000.0);
    RC_ASSERT(parse_length(on_edge_told(distance_mm).in(Unit::mm)) == distance_mm);
    RC_ASSERT(std::abs(parse_length(on_edge_told(distance_mm).in(Unit::inch)) - distance_mm) <=
              1e-6 * distance_mm);
    RC_ASSERT(parse_length(within_told(distance_mm).in(Unit::inch)) <= distance_mm);
}

}  // namespace
}  // namespace dartwright
