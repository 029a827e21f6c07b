#pragma once

// Private to the library: where on a ladder a difference stands.

#include <string>

#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

/// A step of a ladder, by its number; the one beyond the last is the fault.
struct Standing {
    std::size_t step = 0;
    std::string rung;
    double share = 1;
};
/// The sign of the difference does not matter. What is off by rounding alone stays on the rung.
Standing standing(const Ladder& ladder, double difference);
Standing fault_on(const Ladder& ladder);
/// The rungs of a ladder for what has a tolerance of its own: the first ends there, and the others are wider
/// in the same proportion, but never narrower than they are.
Ladder ladder_from(const Ladder& ladder, double tolerance);
/// Whether it is more than the first rung allows.
bool is_off(const Ladder& ladder, double difference);

/// Files give lengths to a thousandth of their unit, and places are computed from them: a difference that is
/// meant to stand on a rung stands there to this, mm or degrees.
inline constexpr double rung_rounding = 1e-6;

}  // namespace dartwright
