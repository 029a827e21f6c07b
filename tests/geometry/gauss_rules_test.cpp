#include "dartwright/geometry/gauss_rules.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dartwright::speed {
namespace {

// A rule of n points is exact for degrees up to 2n - 1 and not for 2n; odd powers vanish by symmetry.
template <std::size_t pairs>
double error_at_power(const GaussRule<pairs>& rule, int power) {
    long double sum = 0;
    for (std::size_t i = 0; i < pairs; ++i) {
        sum += 2 * static_cast<long double>(rule.weights[i]) *
               std::pow(static_cast<long double>(rule.nodes[i]), static_cast<long double>(power));
    }
    return std::abs(static_cast<double>(sum - 2.0L / static_cast<long double>(power + 1)));
}

template <std::size_t pairs>
void expect_exact_to_its_degree(const GaussRule<pairs>& rule) {
    const int points = 2 * static_cast<int>(pairs);
    for (int power = 0; power < 2 * points; power += 2) EXPECT_LT(error_at_power(rule, power), 5e-16);
}

TEST(GaussRules, are_exact_to_their_degree) {
    expect_exact_to_its_degree(rule_8);
    expect_exact_to_its_degree(rule_12);
    expect_exact_to_its_degree(rule_16);
    expect_exact_to_its_degree(rule_24);
    expect_exact_to_its_degree(rule_32);
}

TEST(GaussRules, are_not_exact_beyond) {
    EXPECT_GT(error_at_power(rule_8, 16), 1e-6);
    EXPECT_GT(error_at_power(rule_12, 24), 1e-9);
}

}  // namespace
}  // namespace dartwright::speed
