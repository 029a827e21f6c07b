#pragma once

// Private to the room: what the two parts of a separated piece take over from it.

#include <array>
#include <string>
#include <vector>

#include "dartwright/darts/separating/separation.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {

/// What the parts are to be called, and which of them keeps the fold and the grain.
struct PartsWanted {
    std::array<std::string, 2> names;  ///< by part
    std::size_t held = 0;
    double notch_mm = 0;  ///< the seam's notches, to each side of the pivot
};

/// The two pieces with outline, cut, grain, notches, allowances, marks and double darts; the seam's own
/// notches are added, and its allowance where the whole leaves no doubt of it. What had to be settled is said
/// in `notes`. Impossible if the seam would cross a double dart.
std::array<Piece, 2> separated_pieces(const Piece& whole, const Separation& separation,
                                      const PartsWanted& wanted, Notes notes);

/// The corner of the part's run that was this end of the whole's run, by the name of its neighbour.
std::string end_in_part(const Separation& separation, const std::string& edge, RunEnd end);

/// How far a notch of the seam lies from the pivot along each leg, mm: as asked, or half the leg if that is
/// less.
struct NotchesOfSeam {
    double from_dart_end = 0;    ///< of the one between the pivot and the dart's mouth
    double from_target_end = 0;  ///< and of the other
};
NotchesOfSeam notches_of_seam(const Separation& separation, double wanted_mm);

}  // namespace dartwright
