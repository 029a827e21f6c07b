#pragma once

#include <chrono>
#include <cstddef>
#include <string>

namespace dartwright::tools {

/// A bar on standard error for work that takes a while: nothing unless that is a terminal, and nothing in the
/// first moment, so that short work stays quiet. It is wiped away at the end.
class Progress {
  public:
    /// `what` is what is counted: `pages`.
    Progress(std::string what, std::size_t all);
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress();
    void show(std::size_t done);

  private:
    std::string what_;
    std::size_t all_;
    bool is_wanted_;
    bool is_shown_ = false;
    std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

/// The bar as it stands on a terminal: `[######------------------] 12 of 48 pages`.
std::string progress_line(std::size_t done, std::size_t all, const std::string& what);

}  // namespace dartwright::tools
