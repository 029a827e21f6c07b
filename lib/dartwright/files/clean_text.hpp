#pragma once

#include <string>

namespace dartwright {

/// The words as they may stand in a drawing's file: valid UTF-8 without control characters. Tabs and line
/// ends become a blank; other controls (C0, DEL, C1), characters that turn the reading direction of what
/// follows by force, and non-characters are left out; each byte that is not UTF-8 becomes U+FFFD. O(n).
std::string clean_text(const std::string& words);

}  // namespace dartwright
