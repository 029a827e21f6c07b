#pragma once

// Private to the library: numbers in words, the same whatever locale the program has set, in C or C++. Every
// number that a person or a file is given is written here.

#include <string>

namespace dartwright {

/// With so many decimals, as `%.1f` in the C locale: `-0.5`, `12.0`. Any double.
std::string with_decimals(double value, int decimals);
/// With so many figures at most, as `%.6g` in the C locale: `0.1`, `1e+20`. Any double.
std::string with_figures(double value, int figures);

/// The number rounded to so many decimals, always with a point; -0 is 0. `fixed_decimals(1.5, 2)` is `1.50`,
/// `shortest_decimals(1.5, 2)` is `1.5`. Precondition: finite (std::invalid_argument).
std::string fixed_decimals(double value, int decimals);
std::string shortest_decimals(double value, int decimals);

/// The shortest decimal that reads back as the same double, without an exponent between 1e-7 and 1e16;
/// zero is `0` whatever its sign. Precondition: finite (std::invalid_argument).
std::string decimal(double value);
/// The same without an exponent, however many digits that takes, and with the sign of zero. Precondition:
/// finite (std::invalid_argument).
std::string plain_decimal(double value);

/// A figure before it is rounded to the decimals that are shown: halves of the last decimal are halves then,
/// whatever rounding made of them, and 11.25 is written alike.
double rounded_figure(double value);

/// Ten to the exponent, rounded correctly from -22 to 22, where ten to it is exact, and the same on every
/// system; beyond within one part in 1e14. 0 and infinity where no double is so small or large. O(exponent).
double power_of_ten(int exponent);

/// As messages write it: two decimals below 1, where the tolerances lie, one above; `0` alone has none.
std::string figure_in_sentence(double value);

}  // namespace dartwright
