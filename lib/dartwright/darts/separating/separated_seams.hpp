#pragma once

// Private to the room: the seams of a pattern of which one piece was separated in two.

#include <array>
#include <string>
#include <vector>

#include "dartwright/darts/separating/separation.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

struct SeparatedNames {
    std::string whole;
    std::array<std::string, 2> parts;
    std::string seam;
    std::size_t first = 0;  ///< the part that is the new seam's first side
};

/// The seam with the whole's edges said by the parts': an edge that was divided is two runs in walking order.
/// Corners where the new seam ends too are made free, and that is said in `notes`.
Seam separated_seam(const Seam& seam, const Separation& separation, const SeparatedNames& names,
                    const Pattern& pattern, Notes notes);

/// The seam between the parts, walked from the dart's mouth. An end that lies in a corner of the whole is
/// free: its edges were never meant to run on.
Seam seam_between_parts(const Separation& separation, const SeparatedNames& names);

}  // namespace dartwright
