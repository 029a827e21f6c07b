#pragma once

#include <string>

namespace dartwright {

/// The words as they may stand in a drawing's file: valid UTF-8 without control characters. Tabs and line
/// ends become a blank; other controls (C0, DEL, C1), characters that turn the reading direction of what
/// follows by force, and non-characters are left out; each byte that is not UTF-8 becomes U+FFFD. O(n).
std::string clean_text(const std::string& words);

/// Text of several lines as it may reach a terminal: as above, but line ends (LF, or CR LF) stay, and so do
/// the program's own colours (ESC [ digits and semicolons m). Invisible characters that steer how others are
/// shown are left out, marks of direction among them; those that join letters or part them within a word
/// stay. O(n).
std::string clean_for_terminal(const std::string& text);

/// JSON with those characters of its texts written as \uXXXX that a terminal would obey: the same values.
/// Precondition: it is JSON in UTF-8 without controls below U+0020 in its texts, as its writers give it.
/// O(n).
std::string with_controls_escaped(const std::string& json);

}  // namespace dartwright
