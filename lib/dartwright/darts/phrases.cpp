#include "dartwright/darts/phrases.hpp"

#include <algorithm>
#include <charconv>
#include <string_view>

#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/name.hpp"
#include "dartwright/words/quoted.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

std::string text_of(const char* format, double value) {
    const std::string_view words = format;
    const std::size_t at = words.find('%');
    const std::size_t end = words.find_first_of("fg", at);
    // As C has it without a precision.
    int precision = 6;
    std::from_chars(format + std::min(at + 2, end), format + end, precision);
    const std::string number =
        words[end] == 'f' ? with_decimals(value, precision) : with_figures(value, precision);
    std::string text = std::string(words.substr(0, at)) + number;
    // Two per cent signs after it stand for one.
    for (std::size_t i = end + 1; i < words.size(); ++i) {
        text += words[i];
        if (words[i] == '%') ++i;
    }
    return text;
}

std::string derived_name(const std::string& before, const std::string& name, const std::string& after) {
    std::string made = before + name + after;
    const std::size_t letters = letters_of(made);
    if (letters <= most_letters) return made;
    const std::size_t too_many = letters - most_letters;
    const std::size_t own = letters_of(name);
    throw Impossible("the name " + in_quotes(made) + " would have " + std::to_string(letters) +
                         " letters, and " + std::to_string(most_letters) + " is the most",
                     own > too_many ? "shorten " + in_quotes(name) + " to " + std::to_string(own - too_many) +
                                          " letters or fewer"
                                    : "shorten the names that it is made of");
}

void require_name(const std::string& name) {
    if (!name.empty() && name.find_first_not_of(' ') == std::string::npos)
        throw BadWords("the name " + quoted(name) + " is blank; expected a word");
    if (!has_control_characters(name)) {
        const std::string wanted = name.empty() ? std::string() : wanted_instead_of_name(name);
        if (wanted.empty()) return;
        throw BadWords("the name " + in_quotes(name) + " is too long; expected " + wanted);
    }
    // They are left out of the message, which is one line.
    std::string shown;
    for (const char c : name) shown += has_control_characters({&c, 1}) ? '?' : c;
    throw BadWords("the name " + quoted(shown) +
                   " has control characters (shown as ?); expected one without");
}

void require_span(double span_mm, SpanMayBe may_be) {
    const bool may_be_none = may_be == SpanMayBe::none_or_wide;
    if (span_mm >= least_span_mm || (may_be_none && span_mm == 0)) return;
    throw BadWords("the span is " + asked_told(span_mm) + "; expected " + (may_be_none ? "0, or " : "") +
                   least_told(least_span_mm, 0) + " or more");
}

}  // namespace dartwright
