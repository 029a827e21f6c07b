#include "dartwright/files/clean_text.hpp"

#include <gtest/gtest.h>

#include <string>

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

}  // namespace
}  // namespace dartwright
