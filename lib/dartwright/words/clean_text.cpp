#include "dartwright/words/clean_text.hpp"

#include <cstddef>

#include "dartwright/words/utf8.hpp"

namespace dartwright {

namespace {

bool is_left_out(char32_t code) {
    const bool is_control = code < 0x20 || (code >= 0x7F && code < 0xA0);
    const bool is_direction_forced = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    const bool is_line_end = code == 0x2028 || code == 0x2029;
    const bool is_no_character = (code & 0xFFFEu) == 0xFFFE || (code >= 0xFDD0 && code <= 0xFDEF);
    return is_control || is_direction_forced || is_line_end || is_no_character;
}

/// Format characters (Unicode's general category Cf) but for what belongs to the spelling of words: the two
/// joiners and the signs that Arabic and Syriac write around numbers.
bool is_steering(char32_t code) {
    return code == 0xAD || code == 0x61C || code == 0x180E || code == 0x200B || code == 0x200E ||
           code == 0x200F || (code >= 0x2028 && code <= 0x202E) || (code >= 0x2060 && code <= 0x206F) ||
           code == 0xFEFF || (code >= 0xFFF9 && code <= 0xFFFB) || (code >= 0x1BCA0 && code <= 0x1BCA3) ||
           (code >= 0x1D173 && code <= 0x1D17A) || (code >= 0xE0000 && code <= 0xE007F);
}

/// Most text is plain: where the letters of ASCII end that nobody obeys, from a place on.
std::size_t end_of_plain(const std::string& text, std::size_t place) {
    while (place < text.size() && text[place] >= ' ' && text[place] < 0x7F) ++place;
    return place;
}

/// Bytes of a colour that begins there, or 0.
std::size_t bytes_of_colour(const std::string& text, std::size_t place) {
    if (text.compare(place, 2, "\033[") != 0) return 0;
    const std::size_t end = text.find_first_not_of("0123456789;", place + 2);
    return end != text.npos && text[end] == 'm' ? end + 1 - place : 0;
}

void append_escaped(std::string& out, char32_t code) {
    constexpr const char* hex = "0123456789abcdef";
    const auto append_unit = [&](char32_t unit) {
        out += "\\u";
        for (int shift = 12; shift >= 0; shift -= 4) out += hex[(unit >> shift) & 0xFU];
    };
    if (code < 0x10000) return append_unit(code);
    append_unit(0xD800 + ((code - 0x10000) >> 10));
    append_unit(0xDC00 + ((code - 0x10000) & 0x3FFU));
}

}  // namespace

std::string clean_text(const std::string& words) {
    std::string clean;
    for (std::size_t i = 0; i < words.size();) {
        const Character character = character_at(words, i);
        if (character.bytes == 0) {
            clean += "\xEF\xBF\xBD";
            ++i;
            continue;
        }
        const bool is_blank = character.code == '\t' || character.code == '\n' || character.code == '\r';
        if (is_blank)
            clean += ' ';
        else if (!is_left_out(character.code))
            clean.append(words, i, character.bytes);
        i += character.bytes;
    }
    return clean;
}

std::string clean_for_terminal(const std::string& text) {
    std::string clean;
    clean.reserve(text.size());
    for (std::size_t i = 0; i < text.size();) {
        if (const std::size_t end = end_of_plain(text, i); end > i) {
            clean.append(text, i, end - i);
            i = end;
            continue;
        }
        if (const std::size_t colour = bytes_of_colour(text, i); colour > 0) {
            clean.append(text, i, colour);
            i += colour;
            continue;
        }
        const Character character = character_at(text, i);
        if (character.bytes == 0) {
            clean += "\xEF\xBF\xBD";
            ++i;
            continue;
        }
        const bool is_line_end = character.code == '\n' || text.compare(i, 2, "\r\n") == 0;
        const bool is_kept = is_line_end || character.code == '\t' ||
                             !(is_left_out(character.code) || is_steering(character.code));
        if (is_kept) clean.append(text, i, character.bytes);
        i += character.bytes;
    }
    return clean;
}

std::string with_controls_escaped(const std::string& json) {
    std::string escaped;
    escaped.reserve(json.size());
    for (std::size_t i = 0; i < json.size();) {
        if (const std::size_t end = end_of_plain(json, i); end > i) {
            escaped.append(json, i, end - i);
            i = end;
            continue;
        }
        const Character character = character_at(json, i);
        const bool is_obeyed =
            character.code >= 0x7F && (is_left_out(character.code) || is_steering(character.code));
        const std::size_t bytes = character.bytes == 0 ? 1 : character.bytes;
        if (is_obeyed)
            append_escaped(escaped, character.code);
        else
            escaped.append(json, i, bytes);
        i += bytes;
    }
    return escaped;
}

}  // namespace dartwright
