#pragma once

// The program under test, and folders to run it in.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "support/process.hpp"

namespace dartwright {

using support::Ended;
using support::Process;
using Json = nlohmann::json;

inline const std::string source_folder = DARTWRIGHT_SOURCE_DIR;
inline const std::string exercise = source_folder + "/fixtures/exercises/bust-dart-to-side.json";
inline const std::string bodice = source_folder + "/fixtures/workshop/chorus-bodice.json";

inline Process dartwright_with(std::vector<std::string> words, std::string input = {}) {
    Process process;
    process.words = {DARTWRIGHT_PROGRAM};
    process.words.insert(process.words.end(), words.begin(), words.end());
    process.input = std::move(input);
    return process;
}

inline Ended dartwright(std::vector<std::string> words, std::string input = {}) {
    return support::run(dartwright_with(std::move(words), std::move(input)));
}

/// The word as a shell reads it back, whatever is in it.
inline std::string in_shell_quotes(const std::string& word) {
    std::string quoted = "'";
    for (const char c : word)
        if (c == '\'')
            quoted += "'\\''";
        else
            quoted += c;
    return quoted + "'";
}

/// What a shell makes of the line, run in the folder; `dartwright` in it is the program under test. A
/// function, since not every folder's name can stand in a search path.
inline Ended shell(const std::string& line, const std::string& folder) {
    const std::string program = in_shell_quotes(DARTWRIGHT_PROGRAM);
    Process process;
    process.words = {"sh", "-c", "dartwright() { " + program + " \"$@\"; }; " + line};
    process.folder = folder;
    process.settings = {"PATH=/usr/bin:/bin"};
    return support::run(process);
}

inline std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

inline void write_text(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text;
    if (!file.flush()) throw std::runtime_error("cannot write " + path);
}

/// The text with one stretch replaced. Precondition: it is there (std::runtime_error), so that a fixture that
/// changes does not quietly make a test empty.
inline std::string replaced(std::string text, const std::string& old_words, const std::string& new_words) {
    const std::size_t at = text.find(old_words);
    if (at == std::string::npos) throw std::runtime_error("the text has no " + old_words);
    return text.replace(at, old_words.size(), new_words);
}

/// A folder of its own for one test, gone with it.
class Folder {
  public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "dartwright-XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make " + name);
        path_ = name;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    const std::string& path() const { return path_; }
    std::string operator/(const std::string& name) const { return path_ + "/" + name; }
    std::string add(const std::string& name, const std::string& text) const {
        write_text(*this / name, text);
        return *this / name;
    }
    /// Names in it, sorted.
    std::vector<std::string> names() const {
        std::vector<std::string> found;
        for (const auto& entry : std::filesystem::directory_iterator(path_))
            found.push_back(entry.path().filename().string());
        std::sort(found.begin(), found.end());
        return found;
    }

  private:
    std::string path_;
};

inline std::size_t lines_in(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

/// Asserts of a failure that it says one line that begins with the program's name and has these words.
inline testing::AssertionResult says_one_line(const Ended& ended, const std::string& words) {
    if (lines_in(ended.err) != 1 || ended.err.find("dartwright") != 0)
        return testing::AssertionFailure() << "not one line of the program's: " << ended.err;
    if (ended.err.find(words) == std::string::npos)
        return testing::AssertionFailure() << "no '" << words << "' in: " << ended.err;
    return testing::AssertionSuccess();
}

}  // namespace dartwright
