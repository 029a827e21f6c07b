#pragma once

#include <stdexcept>
#include <string>

namespace dartwright {

/// An operation that geometry does not allow as asked: the reason, and the nearest thing that would work.
class Impossible : public std::runtime_error {
  public:
    Impossible(std::string reason_, std::string remedy_)
        : std::runtime_error(remedy_.empty() ? reason_ : reason_ + "; " + remedy_),
          reason(std::move(reason_)),
          remedy(std::move(remedy_)) {}
    std::string reason;
    std::string remedy;
};

}  // namespace dartwright
