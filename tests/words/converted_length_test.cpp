#include "dartwright/words/converted_length.hpp"
#include "dartwright/words/written_number.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <stdexcept>

#include "geometry/generators.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

constexpr Unit every_unit[] = {Unit::mm, Unit::cm, Unit::inch};

rc::Gen<Unit> any_unit() {
    return rc::gen::element(Unit::mm, Unit::cm, Unit::inch);
}
/// Doubles with all their digits, of either sign, over the sizes of a file and far below.
rc::Gen<double> any_length() {
    return rc::gen::mapcat(generated::log_uniform(1e-9, 1e4), [](double size) {
        return rc::gen::map(testing::evenly(-1'000'000'007, 1'000'000'007),
                            [size](int i) { return size * (i / 999'999'937.0); });
    });
}

TEST(Numbers, DecimalsAreThoseAPersonWrites) {
    EXPECT_EQ(decimal(0), "0");
    EXPECT_EQ(decimal(-0.0), "0");
    EXPECT_EQ(decimal(12), "12");
    EXPECT_EQ(decimal(-7.5), "-7.5");
    EXPECT_EQ(decimal(0.1), "0.1");
    EXPECT_EQ(decimal(0.0001), "0.0001");
    EXPECT_EQ(decimal(10000), "10000");
    EXPECT_EQ(decimal(1e-7), "0.0000001");
    EXPECT_EQ(decimal(1.5e-8), "1.5e-08");
    EXPECT_EQ(decimal(1e22), "1e+22");
    EXPECT_EQ(decimal(0.1 + 0.2), "0.30000000000000004");
}

TEST(Numbers, NumbersThatAreNotFiniteAreRefused) {
    for (const double bad :
         {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
          std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_THROW(decimal(bad), std::invalid_argument);
        for (const Unit unit : every_unit) EXPECT_THROW(from_mm(bad, unit), std::invalid_argument);
    }
}

RC_GTEST_PROP(Numbers, DecimalReadsBackAsTheSameDouble, ()) {
    const double value = *any_length();
    RC_ASSERT(std::strtod(decimal(value).c_str(), nullptr) == value);
}

// What a person writes, to a thousandth of the unit, comes back digit for digit.
RC_GTEST_PROP(Numbers, ShortDecimalsComeBack, ()) {
    const double written = *testing::evenly(-400'000, 400'000) / 1000.0;
    const Unit unit = *any_unit();
    RC_ASSERT(from_mm(to_mm(written, unit), unit) == written);
}

// A length that some number has is written exactly; another one moves by one step at most, once.
RC_GTEST_PROP(Numbers, LengthsComeBackAndThenStay, ()) {
    const double mm = *any_length();
    const Unit unit = *any_unit();
    const double once = to_mm(from_mm(mm, unit), unit);
    const double twice = to_mm(from_mm(once, unit), unit);
    RC_ASSERT(once == mm || once == std::nextafter(mm, once));
    RC_ASSERT(twice == once);
    RC_ASSERT(from_mm(once, unit) == from_mm(mm, unit));
}
RC_GTEST_PROP(Numbers, EveryLengthThatWasReadComesBack, ()) {
    const double read = *any_length();
    const Unit unit = *any_unit();
    const double mm = to_mm(read, unit);
    RC_ASSERT(to_mm(from_mm(mm, unit), unit) == mm);
}

// The window of candidates: every number that rounds to the same millimetres is within two steps of the
// quotient, so none with fewer digits is missed.
RC_GTEST_PROP(Numbers, NumbersOfOneLengthAreNeighbours, ()) {
    const double read = *any_length();
    const Unit unit = *any_unit();
    const double mm = to_mm(read, unit);
    double quotient = mm / mm_in(unit);
    int steps = 0;
    while (quotient != read && steps < 10) {
        quotient = std::nextafter(quotient, read);
        ++steps;
    }
    RC_ASSERT(steps <= 2);
}

TEST(Numbers, TinyLengthsAreStableToo) {
    for (const Unit unit : every_unit) {
        double tiny = std::numeric_limits<double>::denorm_min();
        for (int i = 0; i < 200; ++i, tiny *= 1.5) {
            const double once = to_mm(from_mm(tiny, unit), unit);
            EXPECT_EQ(to_mm(from_mm(once, unit), unit), once) << tiny;
        }
    }
}

}  // namespace
}  // namespace dartwright
