#pragma once

// What the fuzzers share. libFuzzer takes an abort for a find and keeps the input that led to it.

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright::fuzzing {

inline std::string_view as_text(const std::uint8_t* data, std::size_t size) {
    // A null pointer, which libFuzzer passes for no bytes, may not begin a string_view of a std::string.
    return size == 0 ? std::string_view("") : std::string_view(reinterpret_cast<const char*>(data), size);
}

/// Unlike assert, also in a release build.
inline void require(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

/// A problem is one line, and says what was found and what was expected.
inline void require_clear(const FileProblem& problem) {
    require(!problem.found.empty() && !problem.expected.empty(),
            "a problem says what was found and expected");
    for (const std::string* words : {&problem.pointer, &problem.found, &problem.expected})
        require(words->find('\n') == words->npos, "a problem is one line");
}

/// The pattern, or nothing when its problems were listed. Any other exception ends the fuzzer.
inline std::optional<Pattern> pattern_of(std::string_view text) {
    try {
        return read_pattern(text, "fuzzed");
    } catch (const InvalidPattern& invalid) {
        require(!invalid.problems.empty(), "a file that is refused has a problem");
        for (const FileProblem& problem : invalid.problems) require_clear(problem);
        return std::nullopt;
    }
}

/// The same, of no more bytes than this: work on larger inputs only repeats what was tried.
inline std::optional<Pattern> pattern_within(std::size_t most_bytes, const std::uint8_t* data,
                                             std::size_t size) {
    return size > most_bytes ? std::nullopt : pattern_of(as_text(data, size));
}

/// Every double and every name alike. What was remembered of the file's digits may differ: it is only there
/// to give the same bytes.
inline bool is_same(const Pattern& a, const Pattern& b) {
    return a.name == b.name && a.unit == b.unit && a.pieces == b.pieces && a.seams == b.seams &&
           a.tolerances == b.tolerances && a.made == b.made && a.cutting == b.cutting;
}

}  // namespace dartwright::fuzzing
