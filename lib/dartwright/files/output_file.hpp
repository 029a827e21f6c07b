#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

/// An output that exists already and was not to be replaced.
class OutputExists : public Error {
  public:
    explicit OutputExists(std::string existing);
    std::string path;
};

enum class Overwrite { no, yes };

/// Whether the file system vouches that a finished file outlives a power cut. Some cannot say.
enum class Kept { on_disk, perhaps_not_on_disk };

/// A file that is written part by part and comes whole or not at all: the text goes to a file beside it that
/// takes its name and its permissions when it is finished, and is gone if it never is; links are followed, so
/// that the file that the last one names is the one replaced, or made. Devices and pipes are written
/// directly. FileTrouble; OutputExists if there is such a file and it is not to be replaced. New files have
/// the permissions that the process's mask leaves; a disk that refuses those of the old file still keeps the
/// text. Several may be written at a time, by several threads.
class WholeFile {
  public:
    WholeFile(const std::string& path, Overwrite overwrite);
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;
    ~WholeFile();
    void write(std::string_view text);
    /// Once, at the end: the text has then reached the file system.
    Kept finish();

  private:
    struct Target;
    std::unique_ptr<Target> target_;
};

/// Writes a text so; `-` is standard output.
Kept write_file_whole(const std::string& path, std::string_view text, Overwrite overwrite);

/// Removes the names of files that this process has begun and not finished, eight at most: for the handler of
/// a signal that ends it. Safe there. Where file systems allow, such files have no name and need nothing.
void remove_unfinished_files() noexcept;

/// The whole file; `-` is standard input. FileTrouble for a missing file, a folder, no permission.
std::string read_text_file(const std::string& path);

}  // namespace dartwright
