#include "dartwright/files/pattern_file.hpp"

#include "dartwright/files/output_file.hpp"

namespace dartwright {

InvalidPattern::InvalidPattern(std::string in_file, std::vector<FileProblem> found)
    : file(std::move(in_file)), problems(std::move(found)) {
    if (problems.size() > most_problems) {
        more = problems.size() - most_problems;
        problems.resize(most_problems);
    }
    for (const FileProblem& problem : problems) {
        if (!message_.empty()) message_ += '\n';
        message_ += file + ": ";
        if (!problem.pointer.empty()) message_ += problem.pointer + ": ";
        message_ += "found " + problem.found + "; expected " + problem.expected;
    }
    if (more > 0)
        message_ += '\n' + file + ": and " + std::to_string(more) + " more problem" + (more == 1 ? "" : "s");
}

Pattern read_pattern_file(const std::string& path) {
    return read_pattern(read_text_file(path), path == "-" ? "standard input" : path);
}

}  // namespace dartwright
