// Covered by tests/files/output_file_test.cpp.
#include "dartwright/files/file_trouble.hpp"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

std::string error_words(int error) {
    switch (error) {
        case ENOENT:
            return "there is no such file";
        case EISDIR:
            return "it is a folder";
        case ENOTDIR:
            return "a part of the path is not a folder";
        case EACCES:
        case EPERM:
            return "no permission";
        case ENOSPC:
            return "the disk is full";
        case EDQUOT:
            return "there is no more room for this user on the disk";
        case EFBIG:
            return "it is larger than a file may be here";
        case EROFS:
            return "the disk can only be read";
        case ELOOP:
            return "its links lead round in a circle";
        case ENAMETOOLONG:
            return "the name is too long";
        default:
            return std::strerror(error);
    }
}

void fail_file(const std::string& path, const char* what, int error) {
    throw FileTrouble(path + ": cannot be " + what + ": " + error_words(error));
}

void write_all(int descriptor, std::string_view text, const std::string& path) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) fail_file(path, "written", errno);
        text.remove_prefix(static_cast<std::size_t>(written));
    }
}

std::string read_all(int descriptor, const std::string& path) {
    // What the file's size says, and one byte more, so that the end of most files is met at once. A pipe says
    // nothing, and a file may grow.
    struct stat status {};
    const bool is_file = ::fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode);
    constexpr std::size_t least_bytes = 4096;
    constexpr std::size_t most_at_first = std::size_t{1} << 24;
    std::string text;
    text.resize(is_file ? std::clamp(static_cast<std::size_t>(status.st_size) + 1, least_bytes, most_at_first)
                        : least_bytes);
    std::size_t size = 0;
    for (;;) {
        const ssize_t count = ::read(descriptor, text.data() + size, text.size() - size);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) fail_file(path, "read", errno);
        size += static_cast<std::size_t>(count);
        if (count == 0) break;
        if (size == text.size()) text.resize(2 * size);
    }
    text.resize(size);
    return text;
}

}  // namespace dartwright
