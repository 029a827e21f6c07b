#pragma once

// When two numbers are one, and how exact a line is: every bound that more than one file uses, each with its
// unit, its reason, and what goes wrong if it is larger or smaller. Three kinds, which never mix: what
// rounding makes of a number, how exactly a line is drawn, and what nobody at the table can tell apart. The
// trade's tolerances that a pattern's file may change are in pattern/tolerances.hpp. A bound that only one
// algorithm knows stands with it.

namespace dartwright {

// Rounding. Coordinates are metres at most, so that one step leaves some 1e-13 mm.

/// Of lengths that are sums, parts or remainders of arc lengths: their integrals are exact to 1e-9 of a
/// length, a metre's to 1e-6 mm. Larger: a sliver that is meant is taken for rounding. Smaller: a place at
/// the very end of a run is beyond it, and a cut at a joint leaves an edge of no length.
inline constexpr double sum_rounding_mm = 1e-6;

/// Of places and lengths after some steps on coordinates: ten thousand times what one leaves. Larger: what
/// the next operation reads as different was called the same. Smaller: an operation done twice changes
/// something the second time, and the last bit of a number chooses.
inline constexpr double step_rounding_mm = 1e-9;

/// Of angles worked out from lengths: at a metre from the point a millionth of a millimetre. Larger: a
/// part that is asked for is taken for the whole. Smaller: a whole worked out by hand is a part.
inline constexpr double turn_rounding_rad = 1e-9;

/// Of the direction of a line that stands upright: beyond it numbers are turned. Larger: a grain off by a
/// hair's width on a long page stays so. Smaller: a piece that stands as it should gets new last bits.
inline constexpr double upright_rounding_rad = 1e-12;

/// How far inside a stretch its ends are looked at. Larger: a stretch of a millimetre is judged by another
/// place. Smaller: rounding puts them on the other side of a mouth.
inline constexpr double just_inside_mm = 1e-6;

/// Nearer than this what is drawn touches. Larger: a line that ends clear of a dart's point stops at it.
/// Smaller: it stops or passes as the last bit of a number goes.
inline constexpr double touching_mm = 1e-6;

// Drawing accuracy.

/// Of the chords on which it is decided what crosses and what lies inside: a tenth of a pencil's line.
/// Larger: curves that do not touch cross on paper. Smaller: time.
inline constexpr double decision_chord_error_mm = 0.01;

/// Of cutting lines, a tenth of a pencil's line. Larger: steps are seen in print. Smaller: more points, and
/// time.
inline constexpr double cutting_line_error_mm = 0.01;

/// Of curves in pictures and on pages that are looked at, not cut by. Larger: corners are seen on a screen.
/// Smaller: time.
inline constexpr double picture_chord_error_mm = 0.05;

/// Of the lines that words keep clear of, by more than this. Larger: words touch a curve. Smaller: time.
inline constexpr double words_chord_error_mm = 0.2;

// The trade.

/// Points that are nearer are one, as are pivots and the ends of marked lines at a corner: finer than a
/// pencil's line. Larger: legs that really cross close to their points pass. Smaller: darts moved about one
/// pivot cross by what a file's decimals leave.
inline constexpr double one_point_mm = 0.1;

/// A tenth of a hair: a change of a length or width below it is not worth a word, and two widths are one.
/// Larger: a change that a hundredth of a centimetre shows is kept from the reader. Smaller: what a file's
/// decimals leave is told as if it were done.
inline constexpr double tenth_of_hair_mm = 0.01;

/// Half of the last decimal that a sentence shows. Larger: what would be shown is left out. Smaller: '0 mm'
/// is told.
inline constexpr double least_told_mm = 0.0005;

/// A mouth that is narrower is shut: less than any pencil shows, and enough for a direction. Larger: a dart
/// that is drawn is none. Smaller: the direction across the mouth is rounding.
inline constexpr double shut_mouth_mm = 1e-6;

}  // namespace dartwright
