#pragma once

// Private to the library: a file that another file names. Who wrote that one may have meant ill.

#include <string>
#include <string_view>

#include "dartwright/files/exercise_file.hpp"

namespace dartwright {

/// Where a name in a file is looked for.
struct NamedFrom {
    std::string folder;  ///< up to and with its last slash, so that a name can follow; empty: the present one
    NamedFiles files = NamedFiles::anywhere;
};

/// Its path as it is opened and shown.
std::string path_of_named(const NamedFrom& from, const std::string& name);
/// Its text. FileTrouble if it cannot be read, is a pipe, a device or a folder, which are not waited for, or,
/// where that is asked, lies outside the folder once links are followed; what is there is not said then.
std::string read_named_file(const NamedFrom& from, const std::string& name);

/// Whether the text is JSON with such a key, so that what is wrong with it may be quoted. What is anything
/// else is nobody's to see.
bool is_json_with(std::string_view text, std::string_view key);

}  // namespace dartwright
