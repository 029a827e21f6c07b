#pragma once

// Exact yes-or-no questions about points and polygons: the answers are those of exact arithmetic on the
// given doubles (CGAL's exact predicates decide whenever rounding could matter). Precondition everywhere:
// finite coordinates.

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "dartwright/geometry/point.hpp"

namespace dartwright {

enum class Side { right = -1, on = 0, left = 1 };
/// On which side of the directed line from a to b the point lies; `on` also when a == b.
Side side_of_line(Point a, Point b, Point p);

/// Whether p lies in the box, its sides counted, that has a and b at opposite corners.
inline bool is_in_box(Point a, Point b, Point p) {
    return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
           p.y <= std::max(a.y, b.y);
}

struct Segment {
    Point a;
    Point b;
};
enum class Meeting {
    none,      ///< no common point
    touching,  ///< a common point that is an end of one of the two, or an overlap
    crossing   ///< the insides meet in one point and each passes from one side of the other to the other
};
Meeting meeting_of(const Segment& first, const Segment& second);
/// Where the lines of two crossing segments meet (rounded; error a few units in the last place times the
/// condition of the crossing). Precondition: meeting_of(first, second) == Meeting::crossing.
Point crossing_point(const Segment& first, const Segment& second);

enum class Where { outside, boundary, inside };
/// Where p lies by the closed polygon (last vertex joined to the first), by the even-odd rule. O(n).
Where where_in_polygon(std::span<const Point> polygon, Point p);

/// Twice the signed area would be exact only to rounding; positive for anticlockwise. O(n).
double signed_area(std::span<const Point> polygon);

/// Two sides of a polygon (by the index of their first vertex, first < second) that meet where a simple
/// polygon's sides do not, and a place where they do.
struct SelfCrossing {
    std::size_t first = 0;
    std::size_t second = 0;
    Point place;
};
/// Whether, and where, the closed polygon is not simple. Neighbouring equal vertices count as one. Vertices
/// listed in `may_touch` (indices) may coincide with each other: there the boundary may touch itself in that
/// one point as long as it does not pass through itself. All crossings are given, in order of (first,
/// second), at most `most`. O((n + k) log n) for outlines of few monotone chains.
std::vector<SelfCrossing> self_crossings(std::span<const Point> polygon,
                                         std::span<const std::size_t> may_touch = {}, std::size_t most = 16);
bool is_simple(std::span<const Point> polygon, std::span<const std::size_t> may_touch = {});

/// What blocks the view from one vertex of the polygon to another, if anything does: of several the one whose
/// place is nearest to `from`. The view is free when the open segment between the two lies in the polygon's
/// inside. A side that only ends at one of the segment's ends does not block it; a side that runs along it
/// does, and so does any vertex on it that is not in the place of an end. Where the segment starts (or ends)
/// outside the polygon, `side` is that of the end's index. Several vertices may share the place of an end, as
/// at the common pivot of two darts; together they decide which directions lead inside. Preconditions: an
/// anticlockwise polygon that does not pass through itself; indices of vertices in two different places
/// (std::invalid_argument). O(n).
struct BlockedView {
    std::size_t side = 0;
    Point place;
};
std::optional<BlockedView> blocked_view(std::span<const Point> polygon, std::size_t from, std::size_t to);

}  // namespace dartwright
