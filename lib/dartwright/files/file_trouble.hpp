#pragma once

#include <string>
#include <string_view>

namespace dartwright {

/// What an error number of the system says, in plain words: `the disk is full`.
std::string error_words(int error);

/// FileTrouble: "PATH: cannot be WHAT: " and the reason for an error number of the system, in plain words.
[[noreturn]] void fail_file(const std::string& path, const char* what, int error);

/// Writes all of it to an open file or device, begun anew where a signal broke in. FileTrouble.
void write_all(int descriptor, std::string_view text, const std::string& path);

/// Reads to the end from an open file or device, begun anew where a signal broke in. FileTrouble.
std::string read_all(int descriptor, const std::string& path);

}  // namespace dartwright
