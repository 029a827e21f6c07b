#pragma once

// Private to the library: pieces of the sentences in which operations speak.

#include <string>

namespace dartwright {

/// The name as it stands in a sentence: `"waist dart"`.
std::string quoted(const std::string& name);
/// A number in a sentence, by a format of printf that has one double; at most 95 characters.
std::string text_of(const char* format, double value);

}  // namespace dartwright
