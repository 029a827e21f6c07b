#pragma once

// What the library throws. Every error of its own is an Error; anything else (std::bad_alloc, and what a
// broken precondition throws, such as std::invalid_argument) is beyond what a file or a request can cause.

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "dartwright/words/sentence.hpp"

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

/// The base of all that the library throws of its own: one line or more in the trade's words. `what()` has
/// its lengths in mm, and `in` in the reader's unit.
class Error : public std::runtime_error {
  public:
    Error(ErrorKind kind, Sentence message)
        : std::runtime_error(message.in(Unit::mm)), error_kind(kind), message_(std::move(message)) {}
    /// In the unit in which it was asked, if that is known, or in this one.
    std::string in(Unit unit) const { return message_.in(asked_in.value_or(unit)); }
    const Sentence& told() const { return message_; }
    ErrorKind error_kind;
    std::optional<Unit> asked_in = {};  ///< the unit that the asker wrote, for what answers just that

  private:
    Sentence message_;
};

/// An operation that geometry does not allow as asked: the reason, and the nearest thing that would work.
class Impossible : public Error {
  public:
    Impossible(Sentence reason_, Sentence remedy_);
    std::string reason;  ///< in mm
    std::string remedy;
    Sentence reason_told;  ///< the same, for any reader's unit
    Sentence remedy_told;

  protected:
    Impossible(ErrorKind kind, Sentence reason_, Sentence remedy_);
};

/// A place that lies beyond the end of its run; the remedy says how far the run goes.
class BeyondTheRun : public Impossible {
  public:
    /// `place_` in words of its own.
    BeyondTheRun(Sentence place_, std::string edge_, double length_mm_, Unit asked_in_ = Unit::mm);
    std::string place;  ///< in mm
    std::string edge;
    double length_mm;  ///< of the run, sewn
};

/// What was written is not a length, share, place or number; says what was found and what was expected.
class BadWords : public Error {
  public:
    explicit BadWords(Sentence message) : Error(ErrorKind::bad_words, std::move(message)) {}
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
