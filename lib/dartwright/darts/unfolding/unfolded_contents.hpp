#pragma once

// Private to the room: what a piece has besides its outline, and its seams, when it is unfolded.

#include "dartwright/darts/open.hpp"
#include "dartwright/darts/unfolding/unfolding.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// Preconditions of all: the whole's runs are known. What had to be settled is said in `notes`.
std::vector<Notch> unfolded_notches(const Unfolding& unfolding);
std::vector<std::pair<std::string, Allowance>> unfolded_allowance(const Unfolding& unfolding, Notes notes);
/// The fold itself is the last of the marks; notches on it are drills.
std::vector<Mark> unfolded_marks(const Unfolding& unfolding, double gap_mm);
/// One that lies along the fold, alike on both sides, stays one. Impossible for others across the fold.
std::vector<DoubleDart> unfolded_double_darts(const Unfolding& unfolding, double gap_mm);

}  // namespace dartwright
