#include "signals.hpp"

#include <array>
#include <csignal>

#include "dartwright/files/output_file.hpp"

namespace dartwright::tools {
namespace {

void end(int signal) {
    remove_unfinished_files();
    // Held back until this returns; by then it has its usual meaning again.
    std::raise(signal);
}

}  // namespace

void prepare_for_signals() {
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    for (const int signal : std::array{SIGHUP, SIGINT, SIGTERM}) {
        struct sigaction before {};
        if (::sigaction(signal, nullptr, &before) != 0 || before.sa_handler == SIG_IGN) continue;
        struct sigaction action {};
        action.sa_handler = end;
        action.sa_flags = static_cast<int>(SA_RESETHAND);
        sigemptyset(&action.sa_mask);
        ::sigaction(signal, &action, nullptr);
    }
}

}  // namespace dartwright::tools
