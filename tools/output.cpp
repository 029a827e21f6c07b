#include "output.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>

#include "dartwright/files/file_trouble.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright::tools {

namespace {

/// Bytes gathered before they are written: large enough that the cost of a call does not show.
constexpr std::size_t buffer_bytes = 65536;

/// Writes all of it; the error number of what went wrong, or 0.
int write_all(int descriptor, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

}  // namespace

void Output::write(std::string_view text) {
    if (reader_gone_) return;
    waiting_ += clean_for_terminal(std::string(text));
    if (waiting_.size() >= buffer_bytes) flush();
}

void Output::flush() {
    const std::string text = std::move(waiting_);
    waiting_.clear();
    if (reader_gone_) return;
    const int trouble = write_all(descriptor_, text);
    if (trouble == EPIPE) {
        reader_gone_ = true;
    } else if (trouble != 0) {
        throw FileTrouble("standard output: the result cannot be written: " + error_words(trouble));
    }
}

bool Output::is_coloured() const {
    const char* unwanted = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    const bool is_plain = terminal == nullptr || std::string(terminal) == "dumb";
    return isatty(descriptor_) == 1 && !is_plain && (unwanted == nullptr || *unwanted == '\0');
}

std::size_t Output::columns() const {
    winsize size{};
    return isatty(descriptor_) == 1 && ioctl(descriptor_, TIOCGWINSZ, &size) == 0 ? size.ws_col : 0;
}

void say(const std::string& prefix, const std::string& words) {
    say_text(prefix + clean_text(words) + "\n");
}

void say_text(const std::string& text) {
    // Where standard error itself fails there is nobody left to tell.
    static_cast<void>(write_all(STDERR_FILENO, clean_for_terminal(text)));
}

}  // namespace dartwright::tools
