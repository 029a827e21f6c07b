#pragma once

// Private to the library.

#include <string>
#include <vector>

namespace dartwright::words {

/// What the edges that run on over a joint do where the two sides make more or less than 180 degrees
/// together, whichever way up they are drawn: `cuts in`, `juts out`, `cut in`, `jut out`.
std::string at_joint(const std::vector<std::string>& edges, double sum_deg);

}  // namespace dartwright::words
