#pragma once

// The functions whose last bit differs between C libraries, all in one place: whoever needs the same bytes on
// every system changes them here. No other file calls them; a test sees to it.

#include <cmath>

namespace dartwright {

/// Angles in radians. Each is the C library's: off by one unit in the last place at most with glibc, by its
/// manual's list of known errors. Special values as in the C standard, annex F.
inline double hypotenuse(double x, double y) {
    return std::hypot(x, y);
}
inline double sine_of(double angle_rad) {
    return std::sin(angle_rad);
}
inline double cosine_of(double angle_rad) {
    return std::cos(angle_rad);
}
inline double tangent_of(double angle_rad) {
    return std::tan(angle_rad);
}
/// In [-pi/2, pi/2]; NaN for a sine beyond -1 and 1.
inline double angle_of_sine(double sine) {
    return std::asin(sine);
}
/// From the x axis to (x, y), in [-pi, pi]; 0 for no direction.
inline double angle_of_direction(double y, double x) {
    return std::atan2(y, x);
}

}  // namespace dartwright
