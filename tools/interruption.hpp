#pragma once

namespace dartwright::tools {

/// While it lives, the first SIGHUP, SIGINT or SIGTERM only asks the program to come to an end, so that what
/// it has done is written; the second ends it at once. One at a time.
class Interruption {
  public:
    Interruption();
    Interruption(const Interruption&) = delete;
    Interruption& operator=(const Interruption&) = delete;
    ~Interruption();
    bool is_asked() const;
    /// Ends the program by the signal that asked for it. Precondition: it was asked.
    [[noreturn]] void end() const;
};

}  // namespace dartwright::tools
