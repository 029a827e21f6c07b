#pragma once

// Private to the room: an outline opened at a dart.

#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {

/// What follows the dart, all round, to what comes before it, and the dart itself.
struct AroundDart {
    Chain chain;
    DartItem dart;
    double rank = 0;
};
/// Impossible if another dart stands at its mouth.
AroundDart around_dart(const Outline& outline, std::size_t dart);
/// Whether the dart interrupts one edge, rather than standing in the corner between two.
bool is_in_one_run(const AroundDart& around);

/// Directions in which the edge arrives at the mouth and leaves it, in outline order, unit.
Vector direction_before(const AroundDart& around);
Vector direction_after(const AroundDart& around);
/// The corner of the edge over the mouth with the dart closed about its point, degrees. Precondition: the
/// figures are those of the dart, in one run.
double mouth_corner_deg(const AroundDart& around, const DartFigures& figures);

}  // namespace dartwright
