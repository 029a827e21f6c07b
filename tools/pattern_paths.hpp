#pragma once

#include <string>
#include <vector>

namespace dartwright::tools {

/// A file to check. One found in a folder is passed over if it turns out to be JSON of another kind.
struct PatternPath {
    std::string path;
    bool is_from_folder = false;
    std::string trouble;  ///< why a folder cannot be searched; empty for a file
};

/// The files that the words name, in their order: a folder stands for all files below it that end in `.json`,
/// sorted by path; names that begin with a dot are left out, and links to folders are not followed. A folder
/// without any, or that cannot be read, is an entry with trouble.
std::vector<PatternPath> pattern_paths(const std::vector<std::string>& words);

/// The files in the folders among the words that `pattern_paths` leaves out for their names; of those that
/// begin with a dot only what ends in `.json`, and folders that begin with one apart. Sorted by path.
std::vector<std::string> passed_over_paths(const std::vector<std::string>& words);
std::string why_passed_over(const std::string& path);

/// Whether the text is a JSON object that does not claim to be a pattern file: it has no key `dartwright`.
bool is_other_json(const std::string& text);

}  // namespace dartwright::tools
