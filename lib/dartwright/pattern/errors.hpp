#pragma once

// What the library throws. Every error of its own is an Error; anything else (std::bad_alloc, and what a
// broken precondition throws, such as std::invalid_argument) is beyond what a file or a request can cause.

#include <stdexcept>
#include <string>
#include <vector>

namespace dartwright {

enum class ErrorKind {
    impossible,      ///< geometry does not allow what was asked
    beyond_the_run,  ///< a place that lies beyond the end of its run
    unknown_name,    ///< a name that does not exist
    bad_words,       ///< what was written is no length, place, name or number
    bad_pattern,     ///< a pattern, rule or exercise with problems of its own
    unreadable,      ///< a file that cannot be read or written
    output_exists,   ///< an output that was not to be replaced
    library_missing  ///< a library that is loaded where something is drawn
};

/// The base of all that the library throws of its own: one line or more in the trade's words.
class Error : public std::runtime_error {
  public:
    Error(ErrorKind kind, const std::string& message) : std::runtime_error(message), error_kind(kind) {}
    ErrorKind error_kind;
};

/// An operation that geometry does not allow as asked: the reason, and the nearest thing that would work.
class Impossible : public Error {
  public:
    Impossible(std::string reason_, std::string remedy_);
    std::string reason;
    std::string remedy;

  protected:
    Impossible(ErrorKind kind, std::string reason_, std::string remedy_);
};

/// A place that lies beyond the end of its run; the remedy says how far the run goes.
class BeyondTheRun : public Impossible {
  public:
    BeyondTheRun(std::string place_, std::string edge_, double length_mm_);
    std::string place;
    std::string edge;
    double length_mm;  ///< of the run, sewn
};

/// What was written is not a length, share, place or number; says what was found and what was expected.
class BadWords : public Error {
  public:
    explicit BadWords(const std::string& message) : Error(ErrorKind::bad_words, message) {}
};

/// A name that does not exist; the message lists those that do, twenty at most.
class UnknownName : public Error {
  public:
    UnknownName(std::string kind_, std::string name_, std::vector<std::string> known_,
                const std::string& where);
    std::string kind;  ///< `piece`, `edge`, `dart`, ...
    std::string name;
    std::vector<std::string> known;  ///< all of them
};

}  // namespace dartwright
