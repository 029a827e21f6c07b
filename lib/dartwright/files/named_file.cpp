#include "dartwright/files/named_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>

#include "dartwright/files/descriptor.hpp"
#include "dartwright/files/file_trouble.hpp"
#include "dartwright/files/json_tree.hpp"
#include "dartwright/files/output_file.hpp"

namespace dartwright {
namespace {

namespace fs = std::filesystem;

/// With links followed; of what is not there as far as it is.
fs::path resolved(const fs::path& path) {
    std::error_code error;
    const fs::path absolute = fs::absolute(path, error);
    fs::path found = fs::weakly_canonical(absolute, error);
    return error ? fs::path() : found;
}

bool is_below(const fs::path& path, const fs::path& folder) {
    const auto [in_folder, in_path] = std::mismatch(folder.begin(), folder.end(), path.begin(), path.end());
    return !folder.empty() && in_folder == folder.end() && in_path != path.end();
}

[[noreturn]] void refuse(const std::string& path, const char* why) {
    throw FileTrouble(path + ": " + why);
}

void require_plain(const std::string& path, int failed, const struct stat& status) {
    if (failed != 0) fail_file(path, "read", errno);
    if (S_ISDIR(status.st_mode)) fail_file(path, "read", EISDIR);
    if (!S_ISREG(status.st_mode)) refuse(path, "is a pipe or a device, not a file");
}

}  // namespace

std::string path_of_named(const NamedFrom& from, const std::string& name) {
    const std::string path = name.starts_with('/') ? name : from.folder + name;
    return path == "-" ? "./-" : path;
}

std::string read_named_file(const NamedFrom& from, const std::string& name) {
    const std::string path = path_of_named(from, name);
    std::string opened = path;
    if (from.files == NamedFiles::in_own_folder) {
        const fs::path there = resolved(path);
        if (!is_below(there, resolved(from.folder.empty() ? "." : from.folder + ".")))
            refuse(path, "lies outside the folder of the file that names it");
        opened = there.string();
    }
    struct stat status {};
    // Asked before it is opened too: opening a device may do something.
    require_plain(path, ::stat(opened.c_str(), &status), status);
    const int links = from.files == NamedFiles::in_own_folder ? O_NOFOLLOW : 0;
    const Descriptor descriptor(::open(opened.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | links));
    if (!descriptor.is_open()) fail_file(path, "read", errno);
    require_plain(path, ::fstat(descriptor.get(), &status), status);
    return read_all(descriptor.get(), path);
}

bool is_json_with(std::string_view text, std::string_view key) {
    const JsonTree tree = parse_json(text, "a file");
    return tree.root && tree.root->kind == JsonNode::Kind::object && member(*tree.root, key);
}

}  // namespace dartwright
