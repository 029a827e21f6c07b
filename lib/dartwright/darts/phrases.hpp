#pragma once

// Private to the library: pieces of the sentences in which operations speak.

#include <string>

namespace dartwright {

/// The name as it stands in a sentence: `"waist dart"`.
std::string quoted(const std::string& name);
/// A number in a sentence, by a format of printf that has one double; at most 95 characters.
std::string text_of(const char* format, double value);

/// BadWords for a name, asked of an operation, that no pattern file could hold, one with control characters,
/// or that nobody could see, one of blanks. None at all is left to be chosen.
void require_name(const std::string& name);

/// A name made of another, `before` and `after` it; Impossible if it would be longer than a pattern file's
/// names may be.
std::string derived_name(const std::string& before, const std::string& name, const std::string& after);

/// Edges are redrawn over spans of at least this, mm. Our choice, as for edges: less than 1 mm cannot be
/// sewn, and a curve bent over a hair's breadth cannot be drawn.
inline constexpr double least_span_mm = 1;
enum class SpanMayBe { wide, none_or_wide };
/// BadWords for a span that is less; `none_or_wide` allows 0.
void require_span(double span_mm, SpanMayBe may_be);

}  // namespace dartwright
