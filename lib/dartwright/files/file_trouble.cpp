// Covered by tests/files/output_file_test.cpp.
#include "dartwright/files/file_trouble.hpp"

#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {
namespace {

std::string reason(int error) {
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

}  // namespace

void fail_file(const std::string& path, const char* what, int error) {
    throw FileTrouble(path + ": cannot be " + what + ": " + reason(error));
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
    std::string text;
    std::array<char, 65536> buffer{};
    for (;;) {
        const ssize_t count = ::read(descriptor, buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) fail_file(path, "read", errno);
        if (count == 0) return text;
        text.append(buffer.data(), static_cast<std::size_t>(count));
    }
}

}  // namespace dartwright
