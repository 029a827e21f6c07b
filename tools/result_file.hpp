#pragma once

// Where a pattern that an operation made goes: standard output, or a file with `-o`.

#include <string>

#include "arguments.hpp"
#include "dartwright/files/output_file.hpp"

namespace dartwright::tools {

/// `-o FILE` and `--overwrite`.
OptionSpec output_option(const char* help);
OptionSpec overwrite_option();

/// Whether the result goes to standard output: there is no `-o`, or it is `-`.
bool is_to_standard_output(const Arguments& arguments);

/// Writes the result where it was asked for, and what is to be said of it to the other place: standard error
/// when the result takes standard output. A file that is in place is remembered in the call. FileTrouble,
/// OutputExists.
void write_result(const Arguments& arguments, Invocation& call, const std::string& result,
                  const std::string& account);

/// Remembers that the file of `-o` is in place, and says so if its disk does not vouch for it.
void remember_written(Invocation& call, const std::string& path, Kept kept);

}  // namespace dartwright::tools
