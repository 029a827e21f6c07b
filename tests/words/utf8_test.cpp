#include "dartwright/words/utf8.hpp"

#include <gtest/gtest.h>

#include <string>

namespace dartwright {
namespace {

TEST(Utf8, FirstAndLastOfEveryLengthIsWellFormed) {
    for (const char* text :
         {"", "a", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
          "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF", "Å la façon"})
        EXPECT_FALSE(first_malformed_utf8(text).has_value()) << text;
}

TEST(Utf8, NamesTheFirstByteOfWhatIsMalformed) {
    struct Case {
        const char* what;
        std::string text;
    };
    const Case cases[] = {
        {"continuation alone", "\x80"},
        {"overlong in two", "\xC0\xAF"},
        {"overlong in three", "\xE0\x9F\xBF"},
        {"overlong in four", "\xF0\x8F\xBF\xBF"},
        {"surrogate", "\xED\xA0\x80"},
        {"over U+10FFFF", "\xF4\x90\x80\x80"},
        {"no such lead", "\xF5\x80\x80\x80"},
        {"cut short in two", "\xC3"},
        {"cut short in four", "\xF0\x9F\x98"},
        {"lead then letter", "\xC3z"},
        {"Latin-1", "\xE9t\xE9"},
    };
    for (const Case& c : cases) {
        EXPECT_EQ(first_malformed_utf8(c.text), 0U) << c.what;
        EXPECT_EQ(first_malformed_utf8("é" + c.text + "x"), 2U) << c.what;
    }
}

// Every code point that exists, encoded by the rule, is accepted; every surrogate is not.
TEST(Utf8, AcceptsExactlyTheCodePoints) {
    const auto encoded = [](unsigned code) {
        std::string out;
        const auto put = [&](unsigned byte) { out += static_cast<char>(byte); };
        if (code < 0x80)
            put(code);
        else if (code < 0x800)
            put(0xC0 | code >> 6), put(0x80 | (code & 63));
        else if (code < 0x10000)
            put(0xE0 | code >> 12), put(0x80 | (code >> 6 & 63)), put(0x80 | (code & 63));
        else {
            put(0xF0 | code >> 18), put(0x80 | (code >> 12 & 63));
            put(0x80 | (code >> 6 & 63)), put(0x80 | (code & 63));
        }
        return out;
    };
    std::size_t wrong = 0;
    for (unsigned code = 0; code <= 0x110FFF; ++code) {
        const bool exists = code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
        const std::string text = encoded(code);
        if (first_malformed_utf8(text).has_value() == exists) ++wrong;
        const Character character = character_at(text, 0);
        if (exists ? character.code != code || character.bytes != text.size() : character.bytes != 0) ++wrong;
    }
    EXPECT_EQ(wrong, 0U);
}

TEST(Utf8, PlacesCountLinesAndCharactersFromOne) {
    const std::string text = "one\ntwé two\n\nend";
    const auto place = [&](std::size_t offset) {
        const TextPlace p = place_of_offset(text, offset);
        return std::pair(p.line, p.column);
    };
    EXPECT_EQ(place(0), std::pair(std::size_t{1}, std::size_t{1}));
    EXPECT_EQ(place(3), std::pair(std::size_t{1}, std::size_t{4}));  // the line's end belongs to the line
    EXPECT_EQ(place(4), std::pair(std::size_t{2}, std::size_t{1}));
    EXPECT_EQ(place(8), std::pair(std::size_t{2}, std::size_t{4}));  // after a letter of two bytes
    EXPECT_EQ(place(13), std::pair(std::size_t{3}, std::size_t{1}));
    EXPECT_EQ(place(1000), std::pair(std::size_t{4}, std::size_t{4}));
}

}  // namespace
}  // namespace dartwright
