#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace dartwright {

/// A character of a text, by its code point.
struct Character {
    char32_t code = 0;
    std::size_t bytes = 0;  ///< 0 if what stands there is not well-formed UTF-8
};
/// The one that begins at a place. Precondition: the place lies in the text.
Character character_at(std::string_view text, std::size_t place);

/// Offset of the first byte that is not part of well-formed UTF-8 (overlong forms, surrogates and values
/// over U+10FFFF are not), or empty. O(n).
std::optional<std::size_t> first_malformed_utf8(std::string_view text);

/// Where an offset lies, counted from 1 as editors do; columns count characters, not bytes.
struct TextPlace {
    std::size_t line = 1;
    std::size_t column = 1;
};
TextPlace place_of_offset(std::string_view text, std::size_t offset);

}  // namespace dartwright
