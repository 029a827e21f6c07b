#include "dartwright/pattern/errors.hpp"

#include "dartwright/words/lists.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

std::string listed(const std::vector<std::string>& names) {
    return names.empty() ? "there are none" : "there is " + in_a_row(names);
}

}  // namespace

Impossible::Impossible(std::string reason_, std::string remedy_)
    : Impossible(ErrorKind::impossible, std::move(reason_), std::move(remedy_)) {}

Impossible::Impossible(ErrorKind kind, std::string reason_, std::string remedy_)
    : Error(kind, remedy_.empty() ? reason_ : reason_ + "; " + remedy_),
      reason(std::move(reason_)),
      remedy(std::move(remedy_)) {}

BeyondTheRun::BeyondTheRun(std::string place_, std::string edge_, double length_mm_)
    : Impossible(ErrorKind::beyond_the_run,
                 "the place " + place_ + " lies beyond the end of \"" + edge_ + "\", which is " +
                     with_decimals(length_mm_, 6) + " mm long",
                 ""),
      place(std::move(place_)),
      edge(std::move(edge_)),
      length_mm(length_mm_) {}

UnknownName::UnknownName(std::string kind_, std::string name_, std::vector<std::string> known_,
                         const std::string& where)
    : Error(ErrorKind::unknown_name, "no " + kind_ + " \"" + name_ + "\"" +
                                         (where.empty() ? "" : " in " + where) + "; " + listed(known_)),
      kind(std::move(kind_)),
      name(std::move(name_)),
      known(std::move(known_)) {}

}  // namespace dartwright
