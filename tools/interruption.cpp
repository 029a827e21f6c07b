#include "interruption.hpp"

#include <sys/eventfd.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <cstdlib>

#include "dartwright/words/clean_text.hpp"

namespace dartwright::tools {
namespace {

std::atomic<int> asked_by{0};
std::atomic<const std::string*> last_words{nullptr};  // while it is to end at once
int stop = -1;
static_assert(std::atomic<const std::string*>::is_always_lock_free);
static_assert(std::atomic<int>::is_always_lock_free, "a signal handler may not wait");

constexpr std::array signals{SIGHUP, SIGINT, SIGTERM};
std::array<struct sigaction, signals.size()> before;  // what they meant

void set_back() {
    for (std::size_t i = 0; i < signals.size(); ++i) ::sigaction(signals[i], &before[i], nullptr);
}

void say_and_end(int signal, const std::string& line) {
    set_back();
    // Where standard error fails there is nobody left to tell.
    static_cast<void>(::write(STDERR_FILENO, line.data(), line.size()) == 0);
    std::raise(signal);
}

void ask(int signal) {
    const int error = errno;
    asked_by = signal;
    // The next one ends the program at once.
    set_back();
    const std::uint64_t one = 1;
    static_cast<void>(::write(stop, &one, sizeof one) == 0);
    if (const std::string* line = last_words) say_and_end(signal, *line);
    errno = error;
}

}  // namespace

Interruption::Interruption() {
    asked_by = 0;
    stop = ::eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK);
    struct sigaction action {};
    action.sa_handler = ask;
    action.sa_flags = SA_RESTART;
    sigemptyset(&action.sa_mask);
    for (std::size_t i = 0; i < signals.size(); ++i) {
        ::sigaction(signals[i], nullptr, &before[i]);
        if (before[i].sa_handler != SIG_IGN) ::sigaction(signals[i], &action, nullptr);
    }
}

Interruption::~Interruption() {
    set_back();
    if (stop >= 0) ::close(stop);
    stop = -1;
}

bool Interruption::is_asked() const {
    return asked_by != 0;
}

int Interruption::descriptor() const {
    return stop;
}

void Interruption::end() const {
    set_back();
    std::raise(asked_by);
    std::abort();
}

EndingAtOnce::EndingAtOnce(const Interruption& interruption, const std::string& words)
    : line_("dartwright assess: " + clean_text(words) + "\n") {
    last_words = &line_;
    // Said first, asked then; the handler the other way round, so that neither misses the other.
    if (interruption.is_asked()) say_and_end(asked_by, line_);
}

EndingAtOnce::~EndingAtOnce() {
    last_words = nullptr;
}

}  // namespace dartwright::tools
