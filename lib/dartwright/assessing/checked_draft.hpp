#pragma once

// Private to this room.

#include "dartwright/assessing/draft_facts.hpp"

namespace dartwright {

/// The draft as it is checked: in the exercise's names, with its seams, and what it says of corners. What
/// has no meaning where a draft has other edges than the exercise, such as a corner that is not there, is
/// left out, so that it has no problems; no pieces if none of the exercise's is drawn. O(n).
Pattern checked_draft(const DraftFacts& facts);

}  // namespace dartwright
