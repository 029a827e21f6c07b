#include "pattern_paths.hpp"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "dartwright/files/file_trouble.hpp"

namespace dartwright::tools {

namespace fs = std::filesystem;

namespace {

bool is_hidden(const fs::path& path) {
    return path.filename().native().front() == '.';
}

/// Files below a folder; a folder in it that cannot be read is an entry with trouble of its own.
void search(const fs::path& folder, std::vector<PatternPath>& found) {
    std::error_code error;
    for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
        if (is_hidden(entry->path())) continue;
        std::error_code unknown;
        if (entry->is_directory(unknown) && !entry->is_symlink(unknown)) {
            search(entry->path(), found);
        } else if (entry->path().extension() == ".json" && !entry->is_directory(unknown)) {
            // A pipe would be waited for without end.
            const bool is_device = entry->exists(unknown) && !entry->is_regular_file(unknown);
            found.push_back(
                {entry->path().string(), true, is_device ? "is a pipe or a device, not a file" : ""});
        }
    }
    if (error)
        found.push_back({folder.string(), true, "the folder cannot be read: " + error_words(error.value())});
}

// Of hidden files only these are anybody's work.
bool is_hidden_json(const fs::path& path) {
    return is_hidden(path) && (path.extension() == ".json" || path.filename() == ".json");
}

// What `search` leaves out.
void search_others(const fs::path& folder, std::vector<std::string>& found) {
    std::error_code error;
    for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
        const fs::path& path = entry->path();
        std::error_code unknown;
        if (entry->is_directory(unknown)) {
            if (!is_hidden(path) && !entry->is_symlink(unknown)) search_others(path, found);
        } else if (is_hidden(path) ? is_hidden_json(path) : path.extension() != ".json") {
            found.push_back(path.string());
        }
    }
}

}  // namespace

std::vector<PatternPath> pattern_paths(const std::vector<std::string>& words) {
    std::vector<PatternPath> paths;
    for (const std::string& word : words) {
        std::error_code unknown;
        if (word == "-" || !fs::is_directory(word, unknown)) {
            paths.push_back({word, false, {}});
            continue;
        }
        std::vector<PatternPath> found;
        search(word, found);
        std::sort(found.begin(), found.end(),
                  [](const PatternPath& a, const PatternPath& b) { return a.path < b.path; });
        if (found.empty()) found.push_back({word, true, "there is no .json file in this folder"});
        paths.insert(paths.end(), found.begin(), found.end());
    }
    return paths;
}

std::vector<std::string> passed_over_paths(const std::vector<std::string>& words) {
    std::vector<std::string> found;
    for (const std::string& word : words) {
        std::error_code unknown;
        if (word != "-" && fs::is_directory(word, unknown)) search_others(word, found);
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

std::string why_passed_over(const std::string& path) {
    return is_hidden(path) ? "its name begins with a dot" : "its name does not end in .json";
}

bool is_other_json(const std::string& text) {
    const auto json = nlohmann::json::parse(text, nullptr, false);
    return json.is_object() && !json.contains("dartwright");
}

}  // namespace dartwright::tools
