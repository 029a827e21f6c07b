#pragma once

#include "dartwright/drawing/label_places.hpp"
#include "dartwright/pattern/fullness.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Candidate places for words, in the order in which they are liked. None of these looks at what is taken.

/// On which side of a line, as one walks along it.
enum class LineSide { left, right, either };

/// Places along a line of points, turned to run with it and to read upright, clear of the line itself by each
/// of the distances in turn. Precondition: two points or more.
Candidates words_along(const std::vector<Point>& line, const DrawnText& style,
                       const std::vector<double>& distances_mm, LineSide hand);
/// The same for a block of lines. Precondition: one line or more.
Candidates block_along(const std::vector<Point>& line, const std::vector<DrawnText>& lines,
                       const std::vector<double>& distances_mm, LineSide hand);

/// Words in so many lines of about one width, or in fewer where there are not as many words.
std::vector<DrawnText> in_lines(const DrawnText& words, std::size_t lines);

/// Level words away from a place, with a leader to them.
struct LedLabel {
    Label words;
    Point from;  ///< the place
    Point to;    ///< at the words
};
struct LedCandidates {
    std::size_t count = 0;
    std::function<LedLabel(std::size_t)> label;
};
/// In directions turned from `towards` (unit) by up to `widest_turn_deg` either way, the nearest first.
LedCandidates words_led(Point from, std::vector<DrawnText> lines, Vector towards, double widest_turn_deg);

/// Level words around a place.
Candidates words_around(Point place, const DrawnText& style);

/// A wedge from the middle of its mouth to its point. Precondition: the two differ.
struct Wedge {
    Point mouth;
    Point point;
    double intake = 0;
};
/// Blocks of words on either side of a wedge: level ones first, then along it.
std::vector<BlockPlace> places_beside(const Wedge& wedge, const BlockSize& size);

/// The middle of a line of points, by length, and the unit vector that points to its right there.
struct MiddleOfLine {
    Point place;
    Vector rightwards;
};
MiddleOfLine middle_of(const std::vector<Point>& line);

/// Places inside a polygon, the middle of its box first.
std::vector<Point> places_inside(const std::vector<Point>& polygon);

/// The longest part of a run that no dart interrupts.
struct LongestStretch {
    const Run* run = nullptr;
    std::vector<Point> points;
    double length = 0;
};
LongestStretch longest_stretch(const Outline& outline, const Run& run);

/// The marks of a piece in the order in which they are named, each once: of lines that have one name, as the
/// parts of a line that darts divide, the longest first, and the others only where there is room beside them.
struct MarkToName {
    const Mark* mark = nullptr;
    bool is_needed = true;  ///< else another line of its name is named
};
std::vector<MarkToName> marks_to_name(const std::vector<Mark>& marks);

/// The line that a stretch of fullness lies along.
std::vector<Point> points_of_stretch(const Outline& outline, const FullStretch& stretch);

}  // namespace dartwright
