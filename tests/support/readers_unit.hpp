#pragma once

// In which unit a sentence speaks, and the patterns that are asked.

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <string>
#include <vector>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright::testing {

/// Whether a figure or a place is followed by the unit, as ` mm`.
inline bool speaks_of(const std::string& text, const std::string& unit) {
    for (std::size_t at = text.find(unit); at != std::string::npos; at = text.find(unit, at + 1)) {
        const std::size_t end = at + unit.size();
        const bool is_word = end == text.size() || !std::isalpha(static_cast<unsigned char>(text[end]));
        if (is_word && at > 1 && std::isdigit(static_cast<unsigned char>(text[at - 1]))) return true;
        if (is_word && at > 1 && text[at - 1] == ')') return true;
    }
    return false;
}

inline std::vector<std::string> all_fixture_patterns() {
    std::vector<std::string> files;
    for (const char* folder : {"blocks", "workshop", "faults"}) {
        for (const auto& entry :
             std::filesystem::directory_iterator(std::string(DARTWRIGHT_SOURCE_DIR "/fixtures/") + folder)) {
            const std::string name = entry.path().filename();
            const bool is_pattern =
                entry.path().extension() == ".json" && name.find(".expected.") == std::string::npos;
            if (is_pattern) files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

inline Pattern in_inches(const std::string& file) {
    Pattern pattern = read_pattern_file(file);
    pattern.unit = Unit::inch;
    return pattern;
}

}  // namespace dartwright::testing
