#include "dartwright/pattern/errors.hpp"

#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

std::string listed(const std::vector<std::string>& names) {
    return names.empty() ? "there are none" : "there is " + in_a_row(names);
}

}  // namespace

Impossible::Impossible(Sentence reason_, Sentence remedy_)
    : Impossible(ErrorKind::impossible, std::move(reason_), std::move(remedy_)) {}

Impossible::Impossible(ErrorKind kind, Sentence reason_, Sentence remedy_)
    : Error(kind, remedy_.empty() ? reason_ : reason_ + "; " + remedy_),
      reason(reason_.in(Unit::mm)),
      remedy(remedy_.in(Unit::mm)),
      reason_told(std::move(reason_)),
      remedy_told(std::move(remedy_)) {}

BeyondTheRun::BeyondTheRun(Sentence place_, std::string edge_, double length_mm_, Unit asked_in_)
    : Impossible(ErrorKind::beyond_the_run,
                 "the place " + place_ + " lies beyond the end of \"" + edge_ + "\", which is " +
                     within_told(length_mm_) + " long",
                 ""),
      place(place_.in(Unit::mm)),
      edge(std::move(edge_)),
      length_mm(length_mm_) {
    if (asked_in_ == Unit::inch) asked_in = asked_in_;
}

UnknownName::UnknownName(std::string kind_, std::string name_, std::vector<std::string> known_,
                         const std::string& where)
    : Error(ErrorKind::unknown_name, "no " + kind_ + " \"" + name_ + "\"" +
                                         (where.empty() ? "" : " in " + where) + "; " + listed(known_)),
      kind(std::move(kind_)),
      name(std::move(name_)),
      known(std::move(known_)) {}

}  // namespace dartwright
