#pragma once

// Private to the library.

#include <string>
#include <string_view>

namespace dartwright {

/// Text in double quotes for a message: control characters escaped, long text cut.
std::string in_quotes(std::string_view text);

}  // namespace dartwright
