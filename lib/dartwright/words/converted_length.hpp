#pragma once

// Private to the library.

#include "dartwright/words/unit.hpp"

namespace dartwright {

/// Millimetres of a number in a unit: the product, rounded once.
double to_mm(double in_unit, Unit unit);
/// The number to write for a length: of the doubles that to_mm takes to exactly these millimetres the one
/// with the fewest digits. Where there is none (to_mm leaves gaps, so a computed length may have none) the
/// nearest length that has one is written: at most one unit in the last place away, and stable from then on.
/// Precondition: finite (std::invalid_argument).
double from_mm(double mm, Unit unit);

}  // namespace dartwright
