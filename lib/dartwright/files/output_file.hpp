#pragma once

#include <memory>
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

/// A file that is written part by part and comes whole or not at all: the text goes to a file beside it that
/// takes its name and its permissions when it is finished, and is gone if it never is; a link is followed, so
/// that the file it names is the one replaced. Devices and pipes are written directly. FileTrouble;
/// OutputExists if there is such a file and it is not to be replaced.
class WholeFile {
  public:
    WholeFile(const std::string& path, Overwrite overwrite);
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;
    ~WholeFile();
    void write(std::string_view text);
    /// Once, at the end: the text has then reached the file system.
    void finish();

  private:
    struct Target;
    std::unique_ptr<Target> target_;
};

/// Writes a text so; `-` is standard output.
void write_file_whole(const std::string& path, std::string_view text, Overwrite overwrite);

/// The whole file; `-` is standard input. FileTrouble for a missing file, a folder, no permission.
std::string read_text_file(const std::string& path);

}  // namespace dartwright
