#pragma once

// Private to the library and its program.

#include <string>
#include <vector>

namespace dartwright {

/// `a`, `a and b`, `a, b and c`.
std::string all_of(const std::vector<std::string>& words);
/// Names in quotes: `"a"`, `"a" or "b"`, `"a", "b" or "c"`. Of more than twenty the first are told, and how
/// many more there are.
std::string any_of(const std::vector<std::string>& names);
/// The same with commas alone: `"a", "b", "c"`.
std::string in_a_row(const std::vector<std::string>& names);

}  // namespace dartwright
