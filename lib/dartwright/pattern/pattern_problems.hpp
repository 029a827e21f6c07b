#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// One thing that keeps a pattern from being one: where, what was found, what was expected. Lengths in mm.
struct PatternProblem {
    /// JSON pointer (RFC 6901) of the value in the pattern's file, members counted from 0 as in the vectors:
    /// `/pieces/0/outline/items/2/fullness`. Of a piece alone it begins at the piece: `/notches/0/at`.
    std::string pointer;
    std::string piece;                ///< name of the piece; empty if none
    std::string seam;                 ///< name of the seam; empty if none
    std::optional<std::size_t> item;  ///< of the piece's outline
    std::string found;
    std::string expected;
    friend bool operator==(const PatternProblem&, const PatternProblem&) = default;
};

/// Everything that keeps the pattern from being one, in the order of the file's keys; empty for every pattern
/// that the reader or an operation gives. The rules are those of the pattern file (docs/pattern-file.md):
///  - one piece or more; names not empty, of 200 letters or fewer, without control characters, unique among
///  pieces, among seams, and
///    among the darts of a piece; no edge called `start` or `end`
///  - no list of more than 10,000
///  - every number finite; coordinates within 10 m of zero, lengths from 0 to 10 m, angles from 0 to 180
///  - an outline has an edge, runs anticlockwise, and has the items of one name next to each other; it may
///    have a gap, which the check finds
///  - the measured points of a spline are distinct; fullness is less than its item is long, and a tuck is
///    stitched less far than its legs
///  - what folds, grain, `press`, notches, allowances and seams name is there; `from` is an end of its run
///  - a notch at which its edge begins is on an edge that is the whole outline, one on each
///  - a stretch of allowance ends beyond its beginning; marks have two points or more, sides of seams a part
/// What needs the geometry (direction, fullness, stitching) is asked of outlines that are otherwise right.
/// Never throws for what a pattern holds. O(n) in the items, names and points, at the mean.
std::vector<PatternProblem> problems_of(const Pattern& pattern);
/// The same for a piece by itself.
std::vector<PatternProblem> problems_of(const Piece& piece);

/// Puts right what has one meaning only: clockwise outlines are turned anticlockwise, and where a name is
/// `start` or `end` it changes places (notches, allowances, ends, seams). Everything else stays, problems
/// too. The reader does this with every file. O(n).
Pattern put_right(Pattern pattern);

/// Thrown by every function that takes a pattern or a piece and is given one that has problems.
class UnsoundPattern : public Error {
  public:
    /// The message has one line a problem: pointer, found, expected; a hundred, and how many more.
    explicit UnsoundPattern(std::vector<PatternProblem> problems_);
    std::vector<PatternProblem> problems;  ///< never empty
};

/// UnsoundPattern if there is a problem.
void require_sound(const Pattern& pattern);
void require_sound(const Piece& piece);
/// UnsoundPattern, with pointers as of a pattern's `tolerances`, unless they are lengths and angles.
void require_sound(const Tolerances& tolerances);
/// UnsoundPattern, with pointers as of a pattern's `cutting`, unless its names are names and its widths are
/// lengths from 0 to 10 m. The rule itself, made for once, need not have a name.
void require_sound(const CuttingRule& rule);

}  // namespace dartwright
