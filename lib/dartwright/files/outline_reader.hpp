#pragma once

#include <optional>

#include "dartwright/files/run_names.hpp"

namespace dartwright {

struct OutlineRead {
    Outline outline;         ///< anticlockwise
    bool is_turned = false;  ///< the file has it clockwise: `start` and `end` of its runs change places
    RunNames runs;
    std::vector<std::string> darts;  ///< names, in outline order
    bool is_clean = false;           ///< nothing was wrong with it: its geometry may be asked
};
/// Reads an outline. Problems: keys, types, names; a name that recurs apart from itself; measured points
/// that fall on their neighbours; fullness as long as its item.
OutlineRead read_outline(Reading& reading, const JsonNode& node);

/// Whether the outline, its gap closed by a line, runs clockwise. An outline whose area is nothing but
/// rounding is not: turning it would not settle which way it runs.
bool is_clockwise(const Outline& outline);

/// Measured points nearer than this are one place, mm. No tape shows a millionth of a millimetre, and the
/// spline divides by the distance, which must not vanish.
inline constexpr double least_measured_distance_mm = 1e-6;

}  // namespace dartwright
