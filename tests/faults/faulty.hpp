#pragma once

// The program with calls of the system that fail, as broken_calls makes them.

#include "tools/program.hpp"

namespace dartwright {

/// Long tests take every place, short ones every so many: DARTWRIGHT_LONG_TESTS=1 asks for the long ones.
inline bool are_tests_long() {
    const char* asked = std::getenv("DARTWRIGHT_LONG_TESTS");
    return asked != nullptr && *asked != '\0';
}

inline Ended with_faults(const std::vector<std::string>& words, std::vector<std::string> settings) {
    static const std::filesystem::path broken_calls = DARTWRIGHT_BROKEN_CALLS;
    Process process = dartwright_with(words);
    // By its name alone in the folder where it lies: blanks would end the name.
    process.folder = broken_calls.parent_path().string();
    process.settings = std::move(settings);
    process.settings.push_back("LD_PRELOAD=./" + broken_calls.filename().string());
    return support::run(process);
}

}  // namespace dartwright
