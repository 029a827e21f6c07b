#include "interruption.hpp"

#include <atomic>
#include <csignal>
#include <cstdlib>

namespace dartwright::tools {
namespace {

std::atomic<int> asked_by{0};
static_assert(std::atomic<int>::is_always_lock_free, "a signal handler may not wait");

void ask(int signal) {
    // With SA_RESETHAND the next one finds the system's own way: the program ends.
    asked_by = signal;
}

void set(void (*handler)(int)) {
    struct sigaction action {};
    action.sa_handler = handler;
    action.sa_flags = SA_RESTART | (handler == ask ? static_cast<int>(SA_RESETHAND) : 0);
    sigemptyset(&action.sa_mask);
    for (const int signal : {SIGINT, SIGTERM}) ::sigaction(signal, &action, nullptr);
}

}  // namespace

Interruption::Interruption() {
    asked_by = 0;
    set(ask);
}

Interruption::~Interruption() {
    set(SIG_DFL);
}

bool Interruption::is_asked() const {
    return asked_by != 0;
}

void Interruption::end() const {
    set(SIG_DFL);
    std::raise(asked_by);
    std::abort();
}

}  // namespace dartwright::tools
