#include "standard_streams.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <initializer_list>

namespace dartwright::tools {

void hold_closed_streams() {
    // In this order: the lowest number that is free is the one that is given.
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        if (::fcntl(stream, F_GETFD) >= 0 || errno != EBADF) continue;
        // The wrong way round, so that its use fails as that of a closed one does.
        const int opened = ::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);
        if (opened >= 0 && opened != stream) ::close(opened);
    }
}

}  // namespace dartwright::tools
