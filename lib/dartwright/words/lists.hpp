#pragma once

// Private to the library and its program.

#include <string>
#include <vector>

namespace dartwright {

/// `a`, `a and b`, `a, b and c`.
std::string all_of(const std::vector<std::string>& words);
/// Names in quotes: `"a"`, `"a" or "b"`, `"a", "b" or "c"`; long lists are cut.
std::string any_of(const std::vector<std::string>& names);

}  // namespace dartwright
