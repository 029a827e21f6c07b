#pragma once

// Private to the library: numbers in words, the same whatever locale the program has set, in C or C++.

#include <string>

namespace dartwright {

/// With so many decimals, as `%.1f` in the C locale: `-0.5`, `12.0`. Any double.
std::string with_decimals(double value, int decimals);
/// With so many figures at most, as `%.6g` in the C locale: `0.1`, `1e+20`. Any double.
std::string with_figures(double value, int figures);

}  // namespace dartwright
