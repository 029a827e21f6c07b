#pragma once

// Not installed: gathers, ease and tucks in words, for drawings and for the tables of the program.

#include "dartwright/pattern/fullness.hpp"
#include "dartwright/words/unit.hpp"

namespace dartwright {

/// `gather 18.5 to 10.0 cm`, `ease in 0.96 cm`: what is gathered away is too much to be told from its
/// difference, and what is eased in is handled as that.
std::string fullness_figures(const FullStretch& stretch, Unit unit);
/// The same without figures: `gather`, `ease in`.
std::string fullness_verb(const FullStretch& stretch);
/// Where: `between the notches`, `between the neck end and the first notch`, `along the whole edge`, `from
/// 3.0 to 13.0 cm from the side end`. Notches are counted from the run's anticlockwise start, and where they
/// are counted, that end is named.
std::string fullness_place(const Piece& piece, const Run& run, const FullStretch& stretch, Unit unit);

/// All that is gathered, eased or tucked in a piece, one line each: `waist: gather 18.5 to 10.0 cm between
/// the notches`, `waist dart: a tuck, stitched 6.0 cm`.
std::vector<std::string> taken_in_words(const Piece& piece, const std::vector<Run>& runs, Unit unit);

/// `the neck end`: an end of a run by its neighbour; `one end` and `the other end` where both have one name.
std::string end_words(const Run& run, RunEnd end);
/// `first`, `second`, ..., `12th`.
std::string ordinal_words(std::size_t number);

}  // namespace dartwright
