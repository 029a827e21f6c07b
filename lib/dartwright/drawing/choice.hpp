#pragma once

// Choices in a drawing are made on numbers rounded first, so that one that differs in its last bit moves no
// words and changes no sheet.

#include <cmath>
#include "dartwright/words/written_number.hpp"

namespace dartwright {

/// Private to this room. Lengths nearer than this are one where a choice hangs on them, mm: far more than
/// rounding makes of them, far less than anybody sees.
inline constexpr double choice_mm = 1e-6;

/// A length in steps, for choices between lengths that may be equal: by it equal ones are equal whichever way
/// their last bits went. The limits between steps lie where no number lies that somebody wrote.
inline double in_steps(double length_mm) {
    constexpr double step_mm = 1e-4;
    constexpr double off_the_written = 0.3713;
    return std::floor(length_mm / step_mm + off_the_written);
}

/// Up to a whole number, unless it is one but for rounding.
inline double rounded_up(double number) {
    return std::ceil(number - choice_mm);
}

}  // namespace dartwright
