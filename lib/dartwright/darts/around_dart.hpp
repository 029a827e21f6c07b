#pragma once

// Private to the room: an outline opened at a dart.

#include "dartwright/darts/outline_chain.hpp"

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

}  // namespace dartwright
