#pragma once

// Private to this room.

#include "dartwright/assessing/draft_facts.hpp"

namespace dartwright {

/// The sewn lengths of all runs, and of them what is their own: a leg of another length lengthens the run
/// that it stands in, and a corner that was moved both runs that meet there, of which the one that changed
/// more is judged. The darts are measured already.
std::vector<RunFact> run_facts(const DraftFacts& facts);
/// The seams of the finished pattern, as the draft has them. Where seams are judged, a run's part in a seam
/// that no longer matches is taken from what is the run's own.
std::vector<SeamFact> seam_facts(DraftFacts& facts);

}  // namespace dartwright
