#pragma once

// Where a pattern that an operation made goes: standard output, or a file with `-o`.

#include <string>

#include "arguments.hpp"

namespace dartwright::tools {

/// `-o FILE` and `--overwrite`.
OptionSpec output_option(const char* help);
OptionSpec overwrite_option();

/// Whether the result goes to standard output: there is no `-o`, or it is `-`.
bool is_to_standard_output(const Arguments& arguments);

/// Writes the result where it was asked for, and what is to be said of it to the other place: standard error
/// when the result takes standard output. FileTrouble, OutputExists.
void write_result(const Arguments& arguments, Output& out, const std::string& result,
                  const std::string& account);

/// Writes a file as `-o` and `--overwrite` say. Precondition: `-o` was given.
void write_output_file(const Arguments& arguments, const std::string& bytes);

}  // namespace dartwright::tools
