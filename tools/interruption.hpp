#pragma once

#include <string>

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
    /// A descriptor at which there is something to read once it is asked; -1 if the system had none.
    int descriptor() const;
    /// Ends the program by the signal that asked for it. Precondition: it was asked.
    [[noreturn]] void end() const;
};

/// While it lives, the first signal ends the program at once, with these words as a line on standard error:
/// where others are waited for, and nothing is lost by it. One that came before does so now.
class EndingAtOnce {
  public:
    EndingAtOnce(const Interruption& interruption, const std::string& words);
    EndingAtOnce(const EndingAtOnce&) = delete;
    EndingAtOnce& operator=(const EndingAtOnce&) = delete;
    ~EndingAtOnce();

  private:
    std::string line_;
};

}  // namespace dartwright::tools
