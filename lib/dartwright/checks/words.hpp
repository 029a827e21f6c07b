#pragma once

// Private to the library: numbers and lists as the messages write them.

#include <string>
#include <vector>

namespace dartwright::words {

/// `12.3 mm`; two decimals below 1 mm, where the tolerances lie; `0` alone has no decimals.
std::string mm(double value);
/// The same without the unit.
std::string number(double value);
/// `3.4 degrees`.
std::string degrees(double value);
/// `a`, `a and b`, `a, b and c`.
std::string list(const std::vector<std::string>& names);
/// What the edges that run on over a joint do where the two sides make more or less than 180 degrees
/// together, whichever way up they are drawn: `cuts in`, `juts out`, `cut in`, `jut out`.
std::string at_joint(const std::vector<std::string>& edges, double sum_deg);

}  // namespace dartwright::words
