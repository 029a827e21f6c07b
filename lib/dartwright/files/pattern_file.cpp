#include "dartwright/files/pattern_file.hpp"

#include <algorithm>

#include "dartwright/files/output_file.hpp"

namespace dartwright {

namespace {

std::string lines_of(const std::string& file, const std::vector<FileProblem>& problems) {
    std::string lines;
    const std::size_t told = std::min(problems.size(), most_problems);
    for (std::size_t i = 0; i < told; ++i) {
        const FileProblem& problem = problems[i];
        if (i > 0) lines += '\n';
        lines += file + ": ";
        if (!problem.pointer.empty()) lines += problem.pointer + ": ";
        lines += "found " + problem.found + "; expected " + problem.expected;
    }
    const std::size_t more = problems.size() - told;
    if (more > 0)
        lines += '\n' + file + ": and " + std::to_string(more) + " more problem" + (more == 1 ? "" : "s");
    return lines;
}

}  // namespace

InvalidPattern::InvalidPattern(std::string file_, std::vector<FileProblem> problems_)
    : Error(ErrorKind::bad_pattern, lines_of(file_, problems_)),
      file(std::move(file_)),
      problems(std::move(problems_)) {
    if (problems.size() <= most_problems) return;
    more = problems.size() - most_problems;
    problems.resize(most_problems);
}

Pattern read_pattern_file(const std::string& path) {
    return read_pattern(read_text_file(path), path == "-" ? "standard input" : path);
}

}  // namespace dartwright
