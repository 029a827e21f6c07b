#include "dartwright/words/clean_text.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace dartwright {
namespace {

using namespace std::string_literals;

TEST(clean_text, keeps_any_script) {
    for (const std::string& words : {"waist & <side>"s, "Vorderteil Größe 38"s, "перед"s, "前身頃"s,
                                     "الأمام"s, "\xF0\x9F\xA7\xB5 thread"s, ""s})
        EXPECT_EQ(clean_text(words), words);
}

TEST(clean_text, leaves_out_controls) {
    EXPECT_EQ(clean_text("a\x01\x1B[31mb\x7F"s), "a[31mb");
    EXPECT_EQ(clean_text("a\0b"s), "ab");
    EXPECT_EQ(clean_text("a\tb\nc\rd"), "a b c d");
    EXPECT_EQ(clean_text("a\xC2\x85z"s), "az");      // C1
    EXPECT_EQ(clean_text("a\xE2\x80\xAEz"s), "az");  // forced right to left
    EXPECT_EQ(clean_text("a\xEF\xBF\xBFz"s), "az");  // a non-character
    EXPECT_EQ(clean_text("a\xEF\xBF\xBDz"s), "a\xEF\xBF\xBDz");
}

TEST(clean_text, replaces_what_is_not_utf8_byte_by_byte) {
    const std::string mark = "\xEF\xBF\xBD";
    EXPECT_EQ(clean_text("a\xFF\xFEz"s), "a" + mark + mark + "z");
    EXPECT_EQ(clean_text("a\xC3"s), "a" + mark);                            // cut short
    EXPECT_EQ(clean_text("\xC0\xAF"s), mark + mark);                        // overlong '/'
    EXPECT_EQ(clean_text("\xE0\x80\xAF"s), mark + mark + mark);             // overlong '/'
    EXPECT_EQ(clean_text("\xED\xA0\x80"s), mark + mark + mark);             // half of a surrogate pair
    EXPECT_EQ(clean_text("\xF4\x90\x80\x80"s), mark + mark + mark + mark);  // beyond U+10FFFF
}

/// Every character by its code point, in UTF-8.
std::string utf8_of(char32_t code) {
    std::string out;
    const auto put = [&](char32_t byte) { out += static_cast<char>(byte); };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0 | (code >> 6)), put(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
        put(0xE0 | (code >> 12)), put(0x80 | ((code >> 6) & 0x3F)), put(0x80 | (code & 0x3F));
    } else {
        put(0xF0 | (code >> 18)), put(0x80 | ((code >> 12) & 0x3F)), put(0x80 | ((code >> 6) & 0x3F)),
            put(0x80 | (code & 0x3F));
    }
    return out;
}

/// Unicode 14, category Cf, as Python's `unicodedata` lists it, but for those of the spelling of words.
constexpr std::pair<char32_t, char32_t> steering[] = {
    {0xAD, 0xAD},       {0x61C, 0x61C},     {0x180E, 0x180E},   {0x200B, 0x200B},  {0x200E, 0x200F},
    {0x202A, 0x202E},   {0x2060, 0x2064},   {0x2066, 0x206F},   {0xFEFF, 0xFEFF},  {0xFFF9, 0xFFFB},
    {0x1BCA0, 0x1BCA3}, {0x1D173, 0x1D17A}, {0xE0001, 0xE0001}, {0xE0020, 0xE007F}};

bool is_steering_or_control(char32_t code) {
    if (code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029) return true;
    for (const auto& [first, last] : steering)
        if (code >= first && code <= last) return true;
    return false;
}

TEST(clean_for_terminal, lets_no_control_and_no_steering_character_through) {
    for (char32_t code = 0; code <= 0x10FFFF; ++code) {
        if (code >= 0xD800 && code < 0xE000) continue;
        const std::string clean = clean_for_terminal("a" + utf8_of(code) + "z");
        const bool is_line_or_tab = code == '\n' || code == '\t';
        if (!is_steering_or_control(code) || is_line_or_tab) continue;
        ASSERT_EQ(clean, "az") << std::hex << static_cast<unsigned>(code);
    }
    for (const std::string& words :
         {"waist & <side>"s, "перед"s, "前身頃\n"s, "الأمام"s, "می‌خواهم"s, "👩‍🎤"s})
        EXPECT_EQ(clean_for_terminal(words), words);
}

TEST(clean_for_terminal, keeps_line_ends_and_no_lone_return) {
    EXPECT_EQ(clean_for_terminal("a\r\nb\rc\n"), "a\r\nbc\n");
}

TEST(clean_for_terminal, keeps_colours_and_no_other_sequence) {
    EXPECT_EQ(clean_for_terminal("\033[1;31mno\033[0m"), "\033[1;31mno\033[0m");
    EXPECT_EQ(clean_for_terminal("\033[2J\033]0;title\a\033"), "[2J]0;title");
    EXPECT_EQ(clean_for_terminal("\033[31"), "[31");
}

TEST(with_controls_escaped, gives_the_same_values) {
    EXPECT_EQ(with_controls_escaped("{\"name\": \"a\xC2\x9B\xE2\x80\xAEz\xF3\xA0\x80\x81 Größe\"}"),
              R"({"name": "a\u009b\u202ez\udb40\udc01 Größe"})");
}

}  // namespace
}  // namespace dartwright
