#pragma once

// Private to the library.

#include <string_view>

namespace dartwright {

/// Whether a pattern file takes the text for a name: it is not empty and has no control characters. (That it
/// is UTF-8 is asked of every text.)
bool is_name(std::string_view text);
bool has_control_characters(std::string_view text);

}  // namespace dartwright
