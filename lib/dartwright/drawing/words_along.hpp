#pragma once

#include "dartwright/drawing/label_places.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Candidate places for words, in the order in which they are liked. None of these looks at what is taken.

/// On which side of a line, as one walks along it.
enum class Hand { left, right, either };

/// Places along a line of points, turned to run with it and to read upright, clear of the line itself by each
/// of the distances in turn. Precondition: two points or more.
std::vector<Label> words_along(const std::vector<Point>& line, const DrawnText& style,
                               const std::vector<double>& distances_mm, Hand hand);

/// Level words away from the line with a leader to it.
struct LedLabel {
    DrawnText text;
    Point from;  ///< on the line
    Point to;    ///< at the words
};
std::vector<LedLabel> words_off(const std::vector<Point>& line, const DrawnText& style, Hand hand);

/// Level words around a place.
std::vector<Label> words_around(Point place, const DrawnText& style);

/// A wedge from the middle of its mouth to its point. Precondition: the two differ.
struct Wedge {
    Point mouth;
    Point point;
    double intake = 0;
};
/// Lines of words on either side of a wedge: level ones first, then along it.
std::vector<Label> words_beside(const Wedge& wedge, const std::vector<DrawnText>& lines);

/// Places inside a polygon, the middle of its box first.
std::vector<Point> places_inside(const std::vector<Point>& polygon);

/// The longest part of a run that no dart interrupts.
struct LongestStretch {
    const Run* run = nullptr;
    std::vector<Point> points;
    double length = 0;
};
LongestStretch longest_stretch(const Outline& outline, const Run& run);

}  // namespace dartwright
