#include "dartwright/darts/phrases.hpp"

#include <cstdio>

#include "dartwright/pattern/name.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

std::string text_of(const char* format, double value) {
    char text[96];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

void require_name(const std::string& name) {
    if (!name.empty() && name.find_first_not_of(' ') == std::string::npos)
        throw BadWords("the name " + quoted(name) + " is blank; expected a word");
    if (!has_control_characters(name)) return;
    // They are left out of the message, which is one line.
    std::string shown;
    for (const char c : name) shown += has_control_characters({&c, 1}) ? '?' : c;
    throw BadWords("the name " + quoted(shown) +
                   " has control characters (shown as ?); expected one without");
}

void require_span(double span_mm, SpanMayBe may_be) {
    const bool may_be_none = may_be == SpanMayBe::none_or_wide;
    if (span_mm >= least_span_mm || (may_be_none && span_mm == 0)) return;
    throw BadWords("the span is " + text_of("%g mm", span_mm) + "; expected " +
                   (may_be_none ? "0, or " : "") + text_of("%g mm or more", least_span_mm));
}

}  // namespace dartwright
