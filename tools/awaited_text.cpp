#include "awaited_text.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>

#include <array>
#include <cerrno>

#include "dartwright/files/descriptor.hpp"
#include "dartwright/files/file_trouble.hpp"
#include "dartwright/files/output_file.hpp"

namespace dartwright::tools {
namespace {

bool is_waited_for(const std::string& path) {
    struct stat status {};
    const int failed = path == "-" ? ::fstat(STDIN_FILENO, &status) : ::stat(path.c_str(), &status);
    return failed == 0 && !S_ISREG(status.st_mode) && !S_ISDIR(status.st_mode);
}

}  // namespace

std::optional<std::string> awaited_text(const std::string& path, int stop) {
    if (!is_waited_for(path)) return read_text_file(path);
    const std::string name = path == "-" ? "standard input" : path;
    // Opening does not wait for the other end of a pipe; `poll` does, and for `stop` too.
    const Descriptor descriptor(path == "-" ? STDIN_FILENO
                                            : ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (!descriptor.is_open()) fail_file(name, "read", errno);
    std::string text;
    std::array<char, 65536> buffer{};
    for (;;) {
        std::array<pollfd, 2> ready{{{descriptor.get(), POLLIN, 0}, {stop, POLLIN, 0}}};
        if (::poll(ready.data(), ready.size(), -1) < 0) {
            if (errno == EINTR) continue;
            fail_file(name, "read", errno);
        }
        if (ready[1].revents != 0) return std::nullopt;
        const ssize_t count = ::read(descriptor.get(), buffer.data(), buffer.size());
        if (count < 0 && (errno == EINTR || errno == EAGAIN)) continue;
        if (count < 0) fail_file(name, "read", errno);
        if (count == 0) return text;
        text.append(buffer.data(), static_cast<std::size_t>(count));
    }
}

}  // namespace dartwright::tools
