#pragma once

// Private to this room.

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/assessing/draft_facts.hpp"

namespace dartwright {

/// Each piece as it was drawn, with the finished one laid over it: turned over if it is, and at the draft's
/// size where that was recognised as another one.
std::vector<OverlaidPiece> overlaid_pieces(const DraftFacts& facts, const Pattern& draft);

/// How the draft lies and what of it was recognised, in sentences.
std::vector<std::string> notes_on(const DraftFacts& facts);

}  // namespace dartwright
