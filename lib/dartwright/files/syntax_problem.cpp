#include "dartwright/files/syntax_problem.hpp"

#include <algorithm>
#include <array>

#include "dartwright/files/json_tree.hpp"
#include "dartwright/words/quoted.hpp"
#include "dartwright/words/utf8.hpp"

namespace dartwright {
namespace {

/// The parser's message says `... - REASON; last read: 'TOKEN'; expected X`, the last two parts in either
/// order and optional.
struct ParserWords {
    std::string reason;
    std::string expected = "a value";
};

ParserWords words_of(const std::string& message) {
    ParserWords words;
    const auto dash = message.find(" - ");
    words.reason = dash == message.npos ? message : message.substr(dash + 3);
    if (const auto semicolon = words.reason.rfind("; expected "); semicolon != words.reason.npos) {
        words.expected = words.reason.substr(semicolon + 11);
        words.reason.erase(semicolon);
    }
    for (std::string* part : {&words.reason, &words.expected})
        if (const auto last_read = part->find("; last read"); last_read != part->npos) part->erase(last_read);
    return words;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

struct Stretch {
    std::size_t first = 0;
    std::size_t last = 0;  ///< one past its end
};

std::string_view in(std::string_view text, Stretch stretch) {
    return text.substr(stretch.first, stretch.last - stretch.first);
}

/// The word, number or sign that covers an offset, or the word that ends there; whole characters.
Stretch word_at(std::string_view text, std::size_t offset) {
    const auto is_of_word = [&](std::size_t i) {
        return i < text.size() && (is_letter(text[i]) || is_digit(text[i]) ||
                                   std::string_view("+-._").find(text[i]) != text.npos);
    };
    if (!is_of_word(offset) && offset > 0 && is_of_word(offset - 1)) --offset;
    Stretch word{offset, offset + 1};
    if (is_of_word(offset)) {
        while (word.first > 0 && is_of_word(word.first - 1)) --word.first;
        while (is_of_word(word.last)) ++word.last;
        return word;
    }
    const auto is_continued = [&](std::size_t i) {
        return i < text.size() && (static_cast<unsigned char>(text[i]) & 0xC0) == 0x80;
    };
    while (word.first > 0 && is_continued(word.first)) --word.first;
    while (is_continued(word.last)) ++word.last;
    return word;
}

/// The text in quotes whose closing quote is at the offset, without its quotes.
Stretch quoted_before(std::string_view text, std::size_t offset) {
    const auto is_escaped = [&](std::size_t i) {
        std::size_t slashes = 0;
        while (slashes < i && text[i - 1 - slashes] == '\\') ++slashes;
        return slashes % 2 == 1;
    };
    std::size_t open = offset;
    while (open > 0 && (text[--open] != '"' || is_escaped(open))) {
    }
    return {std::min(open + 1, offset), offset};
}

/// The last character before an offset that is not blank, or a zero byte.
char sign_before(std::string_view text, std::size_t offset) {
    const auto last = text.substr(0, offset).find_last_not_of(" \t\r\n");
    return last == text.npos ? '\0' : text[last];
}

bool is_quote_of_word_processor(std::string_view sign) {
    constexpr std::array<std::string_view, 6> quotes{"“", "”", "„", "‘", "’", "«"};
    return std::find(quotes.begin(), quotes.end(), sign) != quotes.end();
}

bool is_with_unit(std::string_view word) {
    if (word.empty() || !is_digit(word.front())) return false;
    const auto letters = std::find_if(word.begin(), word.end(), is_letter);
    const auto unit = word.substr(static_cast<std::size_t>(letters - word.begin()));
    return unit == "mm" || unit == "cm" || unit == "in";
}

/// What to type instead of a word that JSON does not know there; `expected` where nothing is better.
std::string instead_of(std::string_view text, Stretch stretch, const std::string& expected) {
    const std::string_view word = in(text, stretch);
    if (is_quote_of_word_processor(word)) return "straight double quotes (\")";
    if (is_with_unit(word)) return "a number without its unit, which the file says once";
    const std::string_view digits = word.substr(word.front() == '-' ? 1 : 0);
    if (digits.substr(0, 1) == ".") return "a digit before the point";
    if (digits.size() > 1 && digits[0] == '0' && is_digit(digits[1])) return "a number without a 0 before it";
    const bool is_after_decimal_comma =
        stretch.first > 1 && text[stretch.first - 1] == ',' && is_digit(text[stretch.first - 2]);
    if (is_digit(word.front()) && is_after_decimal_comma)
        return expected + "; a decimal is written with a point, as 1.5";
    return expected;
}

/// The parser's words for what it expected, in plainer ones.
std::string plainer(const std::string& expected) {
    // A list or an object may go on as well as end here.
    if (expected == "']'" || expected == "'}'") return "',' or " + expected + " before it";
    if (expected == "string literal") return "a key in double quotes";
    if (expected == "end of input") return "the end of the file";
    if (expected == "'[', '{', or a literal") return "a value";
    return expected;
}

FileProblem problem_at_end(const std::string& pointer, std::string_view text, const ParserWords& words) {
    std::string expected = words.expected == "']'" || words.expected == "'}'" ? "a closing " + words.expected
                                                                              : plainer(words.expected);
    if (words.reason == "invalid string: missing closing quote") expected = "a closing quote";
    return {pointer, "the end of the file " + at_line_and_column(text, text.size()), expected};
}

}  // namespace

std::string at_line_and_column(std::string_view text, std::size_t offset) {
    const TextPlace place = place_of_offset(text, offset);
    return "at line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
}

FileProblem syntax_problem(const std::string& pointer, std::string_view text, std::size_t offset,
                           const std::string& message) {
    const ParserWords words = words_of(message);
    if (words.reason == "unexpected end of input" || offset >= text.size())
        return problem_at_end(pointer, text, words);
    std::string found = words.reason;
    std::string expected = plainer(words.expected);
    std::size_t place = offset;
    if (found == "invalid literal" || found == "invalid number" || found == "unexpected number literal") {
        const Stretch word = word_at(text, offset);
        found = in_quotes(in(text, word));
        place = word.first;
        expected = instead_of(text, word, expected);
    } else if (found == "unexpected string literal") {
        const Stretch quoted = quoted_before(text, offset);
        found = in_quotes(in(text, quoted));
        place = quoted.first - 1;
    } else if (found.compare(0, 11, "unexpected ") == 0) {
        found.erase(0, 11);
        if (sign_before(text, offset) == ',' && (text[offset] == ']' || text[offset] == '}'))
            expected += ", or no comma before it";
    }
    return {pointer, found + " " + at_line_and_column(text, place), expected};
}

}  // namespace dartwright
