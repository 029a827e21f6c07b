#include "dartwright/words/written_number.hpp"
#include "support/evenly.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstring>
#include <limits>

namespace dartwright {
namespace {

std::string printed(const char* format, int precision, double value) {
    char text[400];
    std::snprintf(text, sizeof text, format, precision, value);
    return text;
}

/// Any bits at all, save what is not a number, of which the C library writes the sign.
double any_number() {
    const auto bits = *rc::gen::arbitrary<std::uint64_t>();
    double value = 0;
    std::memcpy(&value, &bits, sizeof value);
    return std::isnan(value) ? 0 : value;
}

// The C library is the judge: tests run in the C locale.
RC_GTEST_PROP(WrittenNumber, IsAsTheCLibraryPrintsIt, ()) {
    const double value =
        *rc::gen::element(0, 1, 2) == 0 ? any_number() : *testing::evenly(-100000, 100000) / 800.0;
    const int precision = *testing::evenly(0, 7);
    RC_ASSERT(with_decimals(value, precision) == printed("%.*f", precision, value));
    RC_ASSERT(with_figures(value, precision) == printed("%.*g", precision, value));
}

// The C library reads a decimal to the nearest double.
TEST(PowerOfTen, IsWhatItIsReadAs) {
    for (int exponent = -22; exponent <= 22; ++exponent)
        EXPECT_EQ(power_of_ten(exponent), std::strtod(("1e" + std::to_string(exponent)).c_str(), nullptr));
    for (int exponent = -300; exponent <= 300; ++exponent) {
        const double read = std::strtod(("1e" + std::to_string(exponent)).c_str(), nullptr);
        EXPECT_NEAR(power_of_ten(exponent) / read, 1, 1e-14) << exponent;
    }
    EXPECT_EQ(power_of_ten(-1000), 0);
    EXPECT_EQ(power_of_ten(std::numeric_limits<int>::max()), std::numeric_limits<double>::infinity());
}

TEST(WrittenNumber, IsOfAnySize) {
    EXPECT_EQ(with_decimals(-std::numeric_limits<double>::max(), 2),
              printed("%.*f", 2, -std::numeric_limits<double>::max()));
    EXPECT_EQ(with_decimals(std::numeric_limits<double>::infinity(), 1), "inf");
    EXPECT_EQ(with_decimals(-0.0, 1), "-0.0");
}

}  // namespace
}  // namespace dartwright
