#pragma once

// Private to the library.

#include <string>
#include <string_view>
#include <vector>

namespace dartwright {

/// Text in double quotes for a message: control characters escaped, long text cut.
std::string in_quotes(std::string_view text);
/// `a`, `b` or `c`; long lists are cut.
std::string any_of(const std::vector<std::string>& names);

}  // namespace dartwright
