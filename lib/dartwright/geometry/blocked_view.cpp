#include <algorithm>
#include <stdexcept>
#include <string>

#include "dartwright/geometry/orientation.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

// For q known to be on the line through `from` and p: whether it lies the same way.
bool is_same_way(Point from, Point p, Point q) {
    const auto is_same_sign = [](double a, double b) { return (a > 0) == (b > 0) && (a < 0) == (b < 0); };
    return !(q == from) && is_same_sign(p.x - from.x, q.x - from.x) &&
           is_same_sign(p.y - from.y, q.y - from.y);
}

// The directions about a point, seen anticlockwise from one of them: those along it come first, then those
// to its left, then those straight back, then those to its right.
int quarter(Point centre, Point start, Point p) {
    const Side side = exact::side_of_line(centre, start, p);
    if (side == Side::left) return 1;
    if (side == Side::right) return 3;
    return is_same_way(centre, start, p) ? 0 : 2;
}

bool is_before(Point centre, Point start, Point p, Point q) {
    const int first = quarter(centre, start, p);
    const int second = quarter(centre, start, q);
    if (first != second) return first < second;
    return exact::side_of_line(centre, p, q) == Side::left;
}

// A side that leaves a point or comes to it.
struct Ray {
    Point end;
    bool is_leaving = false;
};

class View {
  public:
    View(std::span<const Point> polygon, std::size_t from, std::size_t to)
        : polygon_(polygon), from_index_(from), to_index_(to), from_(polygon[from]), to_(polygon[to]) {}

    std::optional<BlockedView> blocked() const {
        if (!starts_inside(from_, to_)) return BlockedView{from_index_, from_};
        std::optional<BlockedView> nearest;
        for (std::size_t i = 0; i < polygon_.size(); ++i) {
            const std::optional<Point> place = blocking_place({polygon_[i], polygon_[next(i)]});
            if (!place) continue;
            if (!nearest || distance(from_, *place) < distance(from_, nearest->place)) nearest = {i, *place};
        }
        if (!nearest && !starts_inside(to_, from_)) nearest = {to_index_, to_};
        return nearest;
    }

  private:
    std::size_t next(std::size_t i) const { return i + 1 == polygon_.size() ? 0 : i + 1; }

    bool is_on_view(Point p) const {
        return is_in_box(from_, to_, p) && exact::side_of_line(from_, to_, p) == Side::on;
    }

    std::optional<Point> blocking_place(const Segment& side) const {
        if (side.a == side.b) return {};
        const bool is_a_end = side.a == from_ || side.a == to_;
        const bool is_b_end = side.b == from_ || side.b == to_;
        if (is_a_end && is_b_end) return from_;
        if (is_a_end) return overlap_with(side.a, side.b);
        if (is_b_end) return overlap_with(side.b, side.a);
        const Segment view{from_, to_};
        const Meeting meeting = meeting_of(view, side);
        if (meeting == Meeting::none) return {};
        if (meeting == Meeting::crossing) return crossing_point(view, side);
        if (is_on_view(side.a)) return side.a;
        if (is_on_view(side.b)) return side.b;
        // An end of the view inside the side: the boundary touches itself there, and the tests of the ends
        // cannot tell on which side of it the view is.
        return from_is_on(side) ? from_ : to_;
    }

    bool from_is_on(const Segment& side) const {
        return exact::side_of_line(side.a, side.b, from_) == Side::on;
    }

    // Of a side that has one end in common with the view.
    std::optional<Point> overlap_with(Point shared, Point other) const {
        const Point far_end = shared == from_ ? to_ : from_;
        if (exact::side_of_line(shared, far_end, other) != Side::on) return {};
        if (!is_same_way(shared, far_end, other)) return {};
        return shared;
    }

    // The sides about a point, none along the view, in clockwise order from the view.
    std::vector<Ray> rays_about(Point centre, Point target) const {
        std::vector<Ray> rays;
        for (std::size_t i = 0; i < polygon_.size(); ++i) {
            const Point a = polygon_[i];
            const Point b = polygon_[next(i)];
            if (a == b) continue;
            if (a == centre) rays.push_back({b, true});
            if (b == centre) rays.push_back({a, false});
        }
        std::sort(rays.begin(), rays.end(),
                  [&](const Ray& p, const Ray& q) { return is_before(centre, target, q.end, p.end); });
        return rays;
    }

    // The next side clockwise of the view decides: the polygon lies left of its sides. Sides that run along
    // each other there and back say nothing.
    bool starts_inside(Point centre, Point target) const {
        const std::vector<Ray> rays = rays_about(centre, target);
        for (std::size_t i = 0; i < rays.size();) {
            int leaving = 0;
            const Point first = rays[i].end;
            for (; i < rays.size() && !is_before(centre, target, rays[i].end, first); ++i) {
                leaving += rays[i].is_leaving ? 1 : -1;
            }
            if (leaving != 0) return leaving > 0;
        }
        return where_in_polygon(polygon_, middle(centre, target)) == Where::inside;
    }

    std::span<const Point> polygon_;
    std::size_t from_index_;
    std::size_t to_index_;
    Point from_;
    Point to_;
};

}  // namespace

std::optional<BlockedView> blocked_view(std::span<const Point> polygon, std::size_t from, std::size_t to) {
    if (from >= polygon.size() || to >= polygon.size()) {
        throw std::invalid_argument("a view needs two vertices of the polygon; it has " +
                                    std::to_string(polygon.size()) + " vertices, asked for were " +
                                    std::to_string(from) + " and " + std::to_string(to));
    }
    if (polygon[from] == polygon[to]) {
        throw std::invalid_argument("a view needs two vertices in different places");
    }
    return View(polygon, from, to).blocked();
}

}  // namespace dartwright
