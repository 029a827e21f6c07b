#pragma once

// A draft that was handed in: what of it can be read.

#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright::tools {

struct DraftRead {
    Pattern pattern;
    std::vector<std::string> notes;  ///< what was left out, and why
};
/// A slip in one name makes a notch, an allowance, a seam or a mark that belongs to nothing: it is left out
/// and said, and the rest is read. InvalidPattern for a file that is wrong elsewhere.
DraftRead read_draft(const std::string& text, const std::string& file);

}  // namespace dartwright::tools
