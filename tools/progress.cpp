#include "progress.hpp"

#include <unistd.h>

#include <algorithm>

#include "output.hpp"

namespace dartwright::tools {

namespace {
/// Shorter work than this needs no bar.
constexpr std::chrono::milliseconds quiet_time{400};
constexpr std::size_t bar_letters = 24;
constexpr const char* wiped = "\r\x1B[K";
}  // namespace

Progress::Progress(std::string what, std::size_t all)
    : what_(std::move(what)), all_(all), is_wanted_(::isatty(STDERR_FILENO) == 1) {}

Progress::~Progress() {
    if (is_shown_) say_text(wiped);
}

void Progress::show(std::size_t done) {
    if (!is_wanted_ || std::chrono::steady_clock::now() - start_ < quiet_time) return;
    is_shown_ = true;
    say_text(wiped + progress_line(done, all_, what_));
}

std::string progress_line(std::size_t done, std::size_t all, const std::string& what) {
    const std::size_t full = all == 0 ? bar_letters : std::min(bar_letters, bar_letters * done / all);
    return "[" + std::string(full, '#') + std::string(bar_letters - full, '-') + "] " + std::to_string(done) +
           " of " + std::to_string(all) + " " + what;
}

}  // namespace dartwright::tools
