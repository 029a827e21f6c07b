#include "dartwright/files/clean_text.hpp"

#include <cstddef>

namespace dartwright {

namespace {

struct Character {
    char32_t code = 0;
    std::size_t bytes = 0;  // 0 if it is not UTF-8
};

std::size_t bytes_announced(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    if (lead >= 0xF0 && lead < 0xF5) return 4;
    return 0;
}

Character character_at(const std::string& words, std::size_t place) {
    const auto lead = static_cast<unsigned char>(words[place]);
    const std::size_t bytes = bytes_announced(lead);
    if (bytes == 0 || place + bytes > words.size()) return {};
    if (bytes == 1) return {lead, 1};
    char32_t code = lead & (0x7Fu >> bytes);
    for (std::size_t i = 1; i < bytes; ++i) {
        const auto next = static_cast<unsigned char>(words[place + i]);
        if ((next & 0xC0u) != 0x80) return {};
        code = (code << 6) | (next & 0x3Fu);
    }
    const bool is_overlong = (bytes == 3 && code < 0x800) || (bytes == 4 && code < 0x10000);
    const bool is_surrogate = code >= 0xD800 && code < 0xE000;
    if (is_overlong || is_surrogate || code > 0x10FFFF) return {};
    return {code, bytes};
}

bool is_left_out(char32_t code) {
    const bool is_control = code < 0x20 || (code >= 0x7F && code < 0xA0);
    const bool is_direction_forced = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    const bool is_line_end = code == 0x2028 || code == 0x2029;
    const bool is_no_character = (code & 0xFFFEu) == 0xFFFE || (code >= 0xFDD0 && code <= 0xFDEF);
    return is_control || is_direction_forced || is_line_end || is_no_character;
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

}  // namespace dartwright
