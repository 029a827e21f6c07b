#pragma once

// What is drawn, before it becomes a file: paths and words at true size. Units are millimetres, y points up,
// and the origin is the lower left corner of the sheet; the writers turn y round where a format wants that.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

struct Colour {
    unsigned char red = 0;
    unsigned char green = 0;
    unsigned char blue = 0;
    friend constexpr bool operator==(Colour, Colour) = default;
};

struct Stroke {
    Colour colour;
    double width_mm = 0.5;
    std::vector<double> dash_mm;  ///< lengths drawn and left out in turn; empty for a whole line
    double dash_begin_mm = 0;     ///< how far into them the line begins
};

/// Curves that follow each other. A fill is that of the even-odd rule.
struct DrawnPath {
    std::vector<Curve> curves;
    bool is_closed = false;
    std::optional<Colour> fill;
    std::optional<Stroke> stroke;
};

enum class Anchor { start, middle, end };

/// One line of words. `at` is the anchor on the base line; they run along `angle_rad` (anticlockwise).
struct DrawnText {
    std::string words;  ///< UTF-8; anything else is replaced when it is written
    Point at;
    double size_mm = 5;  ///< of the em
    Anchor anchor = Anchor::start;
    double angle_rad = 0;
    Colour colour;
    std::optional<Colour> halo;  ///< drawn behind the letters, so that they stand clear of lines
    bool is_bold = false;
};

using DrawnItem = std::variant<DrawnPath, DrawnText>;

/// A named layer: its items first, then the layers in it, each over the one before.
struct DrawnGroup {
    std::string name;
    std::vector<DrawnItem> items;
    std::vector<DrawnGroup> groups;
    std::optional<Box> clip{};  ///< what lies outside of it is not drawn; it is moved but never turned
};

struct Drawing {
    double width_mm = 0;
    double height_mm = 0;
    Colour background{255, 255, 255};
    std::string title;
    std::vector<DrawnGroup> groups;
};

/// A path of straight lines through the points. Precondition: two points or more (std::invalid_argument).
DrawnPath polyline(const std::vector<Point>& points, const Stroke& stroke);
/// A closed polygon without an edge line. Precondition: three points or more (std::invalid_argument).
DrawnPath polygon(const std::vector<Point>& points, Colour fill);
/// A circle as four cubics; they leave the true circle by at most 2.8e-4 of its radius.
DrawnPath circle(Point centre, double radius_mm);

DrawnGroup moved(const DrawnGroup& group, Vector shift);
/// Words turn with the lines. Precondition: no clip in it, which could not turn (std::invalid_argument).
DrawnGroup carried(const DrawnGroup& group, const Motion& motion);
/// A box that holds all paths (to 0.05 mm, line widths left out) and words of the group, clipped or not.
/// Empty if it draws nothing. O(n).
std::optional<Box> bounds(const DrawnGroup& group);

/// Precondition of every writer: a size above 0 and finite numbers throughout, else std::invalid_argument.
void require_drawable(const Drawing& drawing);

}  // namespace dartwright
