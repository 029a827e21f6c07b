#include "named_command.hpp"

#include <algorithm>
#include <filesystem>
#include <regex>
#include <string_view>

namespace dartwright::tools {
namespace {

bool is_plain(char c) {
    constexpr std::string_view also = "_-./,:@%+=";
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           also.find(c) != std::string_view::npos;
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

// A file's name may begin like an option.
std::string file_as_typed(const std::string& file) {
    const bool is_like_option = file.size() > 1 && file.front() == '-';
    return as_typed(is_like_option ? "./" + file : file);
}

// The file's own name with `-mended`, then `-mended-2` and so on, here: what is mended is never written over,
// so that one command can follow another.
std::string mended_name(const std::string& file) {
    if (file == "-") return "mended.json";
    const std::string stem = std::filesystem::path(file).stem().string();
    static const std::regex again("(.*-mended)(?:-([1-9][0-9]{0,5}))?");
    std::smatch found;
    if (!std::regex_match(stem, found, again)) return stem + "-mended.json";
    const int last = found[2].matched ? std::stoi(found[2].str()) : 1;
    return found[1].str() + "-" + std::to_string(last + 1) + ".json";
}

}  // namespace

std::string named_command(const std::vector<std::string>& words, const std::string& file) {
    if (words.empty()) return {};
    std::string line = "dartwright " + as_typed(words.front()) + " " +
                       (file == "-" ? std::string("FILE") : file_as_typed(file));
    for (std::size_t i = 1; i < words.size(); ++i) line += " " + as_typed(words[i]);
    return line + " -o " + file_as_typed(mended_name(file));
}

}  // namespace dartwright::tools
