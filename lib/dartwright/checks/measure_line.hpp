#pragma once

#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A line on one piece, and how often the piece has it when it is made up.
struct MeasuredOnPiece {
    std::string piece;
    double length_mm = 0;  ///< on the piece as drawn, once
    int copies = 1;        ///< 2 for a piece on the fold and for a mirrored pair, else 1
    double total_mm = 0;
};
struct MeasuredLine {
    std::string name;
    std::vector<MeasuredOnPiece> pieces;  ///< those that have the line, in the pattern's order
    double total_mm = 0;
};

/// A line lies along the fold, and is there once, if all of it is nearer to the fold than this. Larger: lines
/// beside the fold count once; smaller: the fold itself drawn as a mark counts twice.
inline constexpr double along_fold_mm = 0.5;

/// The run, or the marked line, of that name across all pieces: of a run its sewn length; of a line its
/// length in the cloth, without what lies outside the outline or in the wedge of a dart as it is drawn
/// (several lines of one name on a piece add up). A piece with both gives its run. UnknownName with the names
/// that exist; Impossible for a piece whose outline does not close. Lengths of marked lines to the chord
/// error of the flattening.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
MeasuredLine measure_line(const Pattern& pattern, const std::string& name);

/// The line square to the grain through a place (`EDGE@DISTANCE/FROM`), in every piece that has that edge:
/// its length in the cloth. UnknownName, BadWords; BeyondTheRun for a run's end; Impossible for a
/// piece without a grain or whose outline does not close.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
MeasuredLine measure_level(const Pattern& pattern, const std::string& place);

}  // namespace dartwright
