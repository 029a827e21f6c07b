#pragma once

#include <string>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// The shortest decimal that reads back as the same double, without an exponent between 1e-7 and 1e16;
/// zero is `0` whatever its sign. Precondition: finite (std::invalid_argument).
std::string decimal(double value);

/// Millimetres of a number in a unit: the product, rounded once.
double to_mm(double in_unit, Unit unit);
/// The number to write for a length: of the doubles that to_mm takes to exactly these millimetres the one
/// with the fewest digits. Where there is none (to_mm leaves gaps, so a computed length may have none) the
/// nearest length that has one is written: at most one unit in the last place away, and stable from then on.
/// Precondition: finite (std::invalid_argument).
double from_mm(double mm, Unit unit);

}  // namespace dartwright
