#pragma once

#include <sys/types.h>

#include <optional>
#include <string>
#include <string_view>

#include "dartwright/files/descriptor.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/unfinished_files.hpp"

namespace dartwright {

/// A new file in the folder of its target, which takes the target's name when it is complete. Where the file
/// system allows it has no name before, so that nothing is left of it whatever ends the process; elsewhere
/// its name is removed by the destructor and by `remove_unfinished_files`.
class FileBeside {
  public:
    /// Made with these permissions, less what the process's mask takes off. FileTrouble, naming the target.
    FileBeside(const std::string& target, mode_t mode);
    FileBeside(const FileBeside&) = delete;
    FileBeside& operator=(const FileBeside&) = delete;
    ~FileBeside();
    void write(std::string_view text);
    /// Gives it these permissions whatever the mask, if any; then brings the text to the disk.
    Kept complete(std::optional<mode_t> mode);
    void replace_target();
    /// Takes the name only if it is still free: OutputExists.
    void become_target();

  private:
    void open_named(mode_t mode);
    std::string target_;
    std::string path_;  ///< its own name; empty while it has none
    Descriptor descriptor_;
    std::optional<UnfinishedFile> unfinished_;
};

}  // namespace dartwright
