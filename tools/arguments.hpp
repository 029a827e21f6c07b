#pragma once

#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "command.hpp"

namespace dartwright::tools {

/// The program was called in a way it does not know; the message is one line.
class WrongUse : public std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// What was asked of a command: values by option, and the words that belong to none.
class Arguments {
  public:
    std::vector<std::string> positional;
    std::map<std::string, std::vector<std::string>> options;

    bool has(const std::string& option) const { return options.count(option) != 0; }
    std::optional<std::string> value(const std::string& option) const;
    std::vector<std::string> values(const std::string& option) const;
    /// WrongUse if it was not given.
    std::string required(const std::string& option) const;
};

/// Reads the words by the command's options (and `--help`, which every command has). A word after an option
/// that wants a value is that value, even when it begins with a dash, as `-8` does; it is not when it is an
/// option of the command. WrongUse: an unknown option (with the nearest known), a value missing or too many,
/// an option given twice that is meant once.
Arguments read_arguments(const Command& command, const std::vector<std::string>& words);

/// WrongUse if there are fewer or more words apart from options.
void require_positional(const Arguments& arguments, std::size_t least, std::size_t most, const char* what);

enum class Format { text, json };
/// The value of `--format`; text if absent. WrongUse for others.
Format format_of(const Arguments& arguments);

/// Every command's `--format`.
OptionSpec format_option();

}  // namespace dartwright::tools
