#pragma once

#include <string>

#include "dartwright/pattern/piece.hpp"

namespace dartwright::tools {

/// What `--worn` and `--side-up` say; WrongUse, with the nearest word, for another.
Worn worn_named(const std::string& word);
SideUp side_up_named(const std::string& word);

}  // namespace dartwright::tools
