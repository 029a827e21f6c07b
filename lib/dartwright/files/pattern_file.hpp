#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// One thing wrong with a file: where (a JSON pointer), what was found, what was expected.
struct FileProblem {
    std::string pointer;
    std::string found;
    std::string expected;
};
/// What is wrong with a file may be of any number: so many are told.
inline constexpr std::size_t most_problems = 100;

/// A file that is not a valid pattern; its problems together, in the file's order.
class InvalidPattern : public Error {
  public:
    /// Of more problems than `most_problems` the rest is counted. The message has one line a problem: file,
    /// pointer, found, expected; and one of how many more.
    InvalidPattern(std::string file_, std::vector<FileProblem> problems_);
    std::string file;
    std::vector<FileProblem> problems;  ///< never empty
    std::size_t more = 0;               ///< problems there are besides
};

/// Reads a pattern from the text of a pattern file; `file` is only for messages. InvalidPattern.
Pattern read_pattern(std::string_view text, const std::string& file);
/// The canonical text of a pattern: reading it gives the same pattern, and writing that the same bytes.
std::string write_pattern(const Pattern& pattern);

/// A file that cannot be read or written: names it and says why.
class FileTrouble : public Error {
  public:
    explicit FileTrouble(const std::string& message) : Error(ErrorKind::unreadable, message) {}
};
/// Reads a file; `-` is standard input. FileTrouble, InvalidPattern.
Pattern read_pattern_file(const std::string& path);

}  // namespace dartwright
