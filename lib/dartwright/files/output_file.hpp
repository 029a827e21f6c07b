#pragma once

#include <string>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

/// An output that exists already and was not to be replaced.
class OutputExists : public std::runtime_error {
  public:
    explicit OutputExists(std::string existing);
    std::string path;
};

enum class Overwrite { no, yes };

/// Writes a whole file or leaves the old one as it was: the text goes to a file beside it that then takes
/// its name and its permissions; a link is followed, so that the file it names is the one replaced. `-` is
/// standard output; devices and pipes are written directly. The text has reached the file system, or
/// FileTrouble says why not. OutputExists if there is such a file and it is not to be replaced.
void write_file_whole(const std::string& path, std::string_view text, Overwrite overwrite);

/// The whole file; `-` is standard input. FileTrouble for a missing file, a folder, no permission.
std::string read_text_file(const std::string& path);

}  // namespace dartwright
