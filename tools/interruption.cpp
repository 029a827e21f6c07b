#include "interruption.hpp"

#include <array>
#include <atomic>
#include <csignal>
#include <cstdlib>

namespace dartwright::tools {
namespace {

std::atomic<int> asked_by{0};
static_assert(std::atomic<int>::is_always_lock_free, "a signal handler may not wait");

constexpr std::array signals{SIGHUP, SIGINT, SIGTERM};
std::array<struct sigaction, signals.size()> before;  // what they meant

void set_back() {
    for (std::size_t i = 0; i < signals.size(); ++i) ::sigaction(signals[i], &before[i], nullptr);
}

void ask(int signal) {
    asked_by = signal;
    // The next one ends the program at once.
    set_back();
}

}  // namespace

Interruption::Interruption() {
    asked_by = 0;
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
}

bool Interruption::is_asked() const {
    return asked_by != 0;
}

void Interruption::end() const {
    set_back();
    std::raise(asked_by);
    std::abort();
}

}  // namespace dartwright::tools
