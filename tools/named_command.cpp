#include "named_command.hpp"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace dartwright::tools {
namespace {

bool is_plain(char c) {
    constexpr std::string_view also = "_-./,:@%+=";
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || also.find(c) != std::string_view::npos;
}

// Between single quotes the shell takes every letter as it is, but for that quote; names with a space are
// easier to read between double ones.
std::string as_typed(const std::string& word) {
    if (!word.empty() && std::all_of(word.begin(), word.end(), is_plain)) return word;
    const bool is_quiet = std::all_of(word.begin(), word.end(), [](char c) {
        return is_plain(c) || c == ' ' || static_cast<unsigned char>(c) >= 0x80;
    });
    if (is_quiet) return '"' + word + '"';
    std::string typed = "'";
    for (const char c : word) typed += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return typed + "'";
}

// A file's name may begin like an option. What came from standard input is not there a second time.
std::string file_as_typed(const std::string& file) {
    if (file == "-") return "FILE";
    const bool is_like_option = file.size() > 1 && file.front() == '-';
    return as_typed(is_like_option ? "./" + file : file);
}

}  // namespace

std::string named_command(const std::vector<std::string>& words, const std::string& file) {
    if (words.empty()) return {};
    std::string line = "dartwright " + as_typed(words.front()) + " " + file_as_typed(file);
    for (std::size_t i = 1; i < words.size(); ++i) line += " " + as_typed(words[i]);
    return line + " -o mended.json";
}

}  // namespace dartwright::tools
