#include "dartwright/words/utf8.hpp"

#include <algorithm>
#include <cstdint>
#include <cstring>

namespace dartwright {
namespace {

using Byte = unsigned char;

/// The bytes that may follow a leading byte: how many, and the range of the first of them (which is what
/// keeps out overlong forms, surrogates and values that are too large).
struct Following {
    int count = 0;
    Byte low = 0x80;
    Byte high = 0xBF;
};

std::optional<Following> following(Byte lead) {
    if (lead < 0x80) return Following{};
    if (lead >= 0xC2 && lead <= 0xDF) return Following{1};
    if (lead == 0xE0) return Following{2, 0xA0, 0xBF};
    if (lead == 0xED) return Following{2, 0x80, 0x9F};
    if (lead >= 0xE1 && lead <= 0xEF) return Following{2};
    if (lead == 0xF0) return Following{3, 0x90, 0xBF};
    if (lead >= 0xF1 && lead <= 0xF3) return Following{3};
    if (lead == 0xF4) return Following{3, 0x80, 0x8F};
    return std::nullopt;
}

bool is_continuation(char c) {
    return (static_cast<Byte>(c) & 0xC0) == 0x80;
}

}  // namespace

Character character_at(std::string_view text, std::size_t place) {
    const auto lead = static_cast<Byte>(text[place]);
    if (lead < 0x80) return {lead, 1};
    const auto rest = following(lead);
    if (!rest) return {};
    const auto bytes = static_cast<std::size_t>(rest->count) + 1;
    if (place + bytes > text.size()) return {};
    char32_t code = lead & (0x7FU >> bytes);
    for (std::size_t k = 1; k < bytes; ++k) {
        const auto byte = static_cast<Byte>(text[place + k]);
        const bool fits = k == 1 ? byte >= rest->low && byte <= rest->high : byte >= 0x80 && byte <= 0xBF;
        if (!fits) return {};
        code = (code << 6) | (byte & 0x3FU);
    }
    return {code, bytes};
}

std::optional<std::size_t> first_malformed_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        // Most text is ASCII, which is passed over by eights.
        constexpr std::uint64_t high_bits = 0x8080808080808080;
        std::uint64_t eight = 0;
        while (text.size() - i >= sizeof eight) {
            std::memcpy(&eight, text.data() + i, sizeof eight);
            if ((eight & high_bits) != 0) break;
            i += sizeof eight;
        }
        if (i == text.size()) break;
        const Character character = character_at(text, i);
        if (character.bytes == 0) return i;
        i += character.bytes;
    }
    return std::nullopt;
}

TextPlace place_of_offset(std::string_view text, std::size_t offset) {
    const std::string_view before = text.substr(0, std::min(offset, text.size()));
    const std::size_t line_start = before.rfind('\n') == before.npos ? 0 : before.rfind('\n') + 1;
    const std::string_view line = before.substr(line_start);
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const auto characters =
        std::count_if(line.begin(), line.end(), [](char c) { return !is_continuation(c); });
    return {static_cast<std::size_t>(lines) + 1, static_cast<std::size_t>(characters) + 1};
}

}  // namespace dartwright
