#pragma once

// Private to the room: an outline as a list of items that know their own start, so that parts of it can be
// taken out, turned and put together again.

#include <string>
#include <vector>

#include "dartwright/pattern/outline.hpp"

namespace dartwright {

struct ChainItem {
    Point start;
    OutlineItem item;
    /// Position in the outline it came from; the joined outline begins at the least one, so that an
    /// outline keeps its start.
    double rank = 0;
};
using Chain = std::vector<ChainItem>;

Chain chain_of(const Outline& outline);
/// Precondition: each item starts where the one before it ends, cyclically (to rounding).
Outline outline_of(Chain chain);

/// Two items of one run are made one again only where their curves agree to this, mm: a thousand times the
/// rounding of coordinates of a metre, far below anything that a pencil or a fit could show.
inline constexpr double rejoin_mm = 1e-9;

/// The edge item cut in two at a geometric distance from its start. Splines give one cubic a span; fullness
/// is shared by length. Precondition: an edge item, 0 < along < its length.
struct CutItem {
    Chain before;
    Chain after;
};
CutItem cut_item(const ChainItem& item, double along_mm);

/// The edge items at an end of the chain that have one name, darts ending them. Precondition: an edge stands
/// there.
Chain run_at_start(const Chain& chain);
Chain run_at_end(const Chain& chain);
/// Geometric length of edge items, mm. Precondition: no darts among them.
double length_of(const Chain& edges);

/// The item under a rigid motion, darts with their points, pivots and legs.
ChainItem moved(const ChainItem& item, const Motion& motion);
Chain moved(Chain chain, const Motion& motion);

/// The first item of `chain` made to start, or the last made to end, at the given point; a curve's nearest
/// control moves with its end.
void start_at(Chain& chain, Point start);
void end_at(Chain& chain, Point end);

/// The chain with items `first` and the one after it (cyclically) made one, if they are parts of one line or
/// cubic of one run.
Chain rejoined_at(Chain chain, std::size_t first);

}  // namespace dartwright
