#pragma once

// Private to the library.

#include <string>

#include "dartwright/pattern/outline.hpp"

namespace dartwright {

/// Whether the outline, its gap closed by a line, runs clockwise. An outline whose area is nothing but
/// rounding is not: turning it would not settle which way it runs. Precondition: finite, the points of its
/// splines distinct. O(items).
bool is_clockwise(const Outline& outline);

/// `start` and `end` are kept for the ends of a run whose two neighbours have one name.
bool is_end_word(const std::string& name);
/// The other of `start` and `end`; other names are themselves. For outlines turned the other way round.
std::string with_ends_swapped(const std::string& name);

}  // namespace dartwright
