#pragma once

#include <string>

namespace dartwright {

/// Words as they may stand in HTML or XML, between tags or in a quoted attribute: markup in them is shown and
/// not obeyed, and what is no text (`clean_text`) is left out. O(n).
std::string markup_text(const std::string& words);

}  // namespace dartwright
