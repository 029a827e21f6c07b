#include "worn_option.hpp"

#include "arguments.hpp"
#include "dartwright/words/nearest_word.hpp"

namespace dartwright::tools {

Worn worn_named(const std::string& word) {
    if (word == "front") return Worn::front;
    if (word == "back") return Worn::back;
    throw WrongUse("--worn is front or back, not '" + word + "'" + nearest_told(word, {"front", "back"}));
}

SideUp side_up_named(const std::string& word) {
    if (word == "right") return SideUp::right;
    if (word == "wrong") return SideUp::wrong;
    throw WrongUse("--side-up is right or wrong, not '" + word + "'" +
                   nearest_told(word, {"right", "wrong"}));
}

}  // namespace dartwright::tools
