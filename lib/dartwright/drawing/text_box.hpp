#pragma once

#include <string>
#include <vector>

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

/// The face that words are measured and drawn in. Viewers of an SVG without it take the next of the list;
/// those have nearly the same widths.
inline constexpr const char* text_face = "DejaVu Sans";
inline constexpr const char* text_faces_svg = "'DejaVu Sans', Verdana, sans-serif";

/// How far letters reach above and below the base line, in ems: capitals with an accent left out, tails in.
inline constexpr double text_ascent_em = 0.76;
inline constexpr double text_descent_em = 0.22;

/// Width of the stroke of a halo, half of which lies outside the letters.
inline constexpr double halo_width_em = 0.3;

/// Width of the words in mm. O(letters).
double text_width(const std::string& words, double size_mm, bool is_bold = false);

/// The words broken at blanks into lines of at most the width; a longer word is broken too.
std::vector<std::string> wrapped(const std::string& words, double size_mm, double width_mm,
                                 bool is_bold = false);

/// A rectangle at any angle.
struct TurnedBox {
    Point centre;
    Vector along{1, 0};  ///< unit
    double half_length = 0;
    double half_height = 0;
};
TurnedBox box_of(const DrawnText& text);
Box upright_box(const TurnedBox& box);
TurnedBox grown(TurnedBox box, double margin_mm);
/// Whether two boxes share a point (to rounding).
bool is_meeting(const TurnedBox& a, const TurnedBox& b);
/// Whether the box and the stretch from `from` to `to` share a point (to rounding).
bool is_meeting(const TurnedBox& box, Point from, Point to);

}  // namespace dartwright
