#include <algorithm>
#include <limits>

#include "dartwright/geometry/all_self_crossings.hpp"
#include "dartwright/geometry/curve.hpp"
#include "dartwright/geometry/orientation.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

bool has_neighbours_in_one_place(std::span<const Point> polygon) {
    Point last = polygon.back();
    bool is_found = false;
    for (const Point p : polygon) {
        is_found |= (p.x == last.x) & (p.y == last.y);
        last = p;
    }
    return is_found;
}

// The polygon without neighbouring repetitions; its first vertex follows the last. A polygon that has none,
// as nearly all, is not copied.
class Ring {
  public:
    Ring(std::span<const Point> polygon, std::span<const std::size_t> may_touch) : points_(polygon) {
        if (may_touch.empty() && (polygon.empty() || !has_neighbours_in_one_place(polygon))) return;
        keep_different(polygon, may_touch);
        points_ = kept_;
    }
    Ring(const Ring&) = delete;
    Ring& operator=(const Ring&) = delete;

    std::size_t size() const { return points_.size(); }
    Point at(std::size_t i) const { return points_[i == points_.size() ? 0 : i]; }
    std::size_t before(std::size_t i) const { return i == 0 ? size() - 1 : i - 1; }
    /// The index in the polygon given.
    std::size_t origin_of(std::size_t i) const { return origin_.empty() ? i : origin_[i]; }
    bool can_touch(std::size_t i) const { return !can_touch_.empty() && can_touch_[i]; }

  private:
    void keep_different(std::span<const Point> polygon, std::span<const std::size_t> may_touch) {
        kept_.reserve(polygon.size());
        origin_.reserve(polygon.size());
        std::vector<char> can_touch(may_touch.empty() ? 0 : polygon.size());
        for (const std::size_t i : may_touch) can_touch.at(i) = 1;
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const std::size_t next = i + 1 == polygon.size() ? 0 : i + 1;
            // A side starts at the last of a row of equal vertices.
            if (polygon[i] == polygon[next]) {
                if (!can_touch.empty() && can_touch[i]) can_touch[next] = 1;
                continue;
            }
            kept_.push_back(polygon[i]);
            origin_.push_back(i);
        }
        for (const std::size_t i : origin_)
            if (!can_touch.empty()) can_touch_.push_back(can_touch[i]);
    }

    std::span<const Point> points_;
    std::vector<Point> kept_;
    std::vector<std::size_t> origin_;
    std::vector<char> can_touch_;
};

struct Range {
    std::size_t first = 0;
    std::size_t last = 0;  // index of the vertex at the end
    std::size_t sides() const { return last - first; }
};

// For p known to be on the line through a and b.
bool is_inside_stretch(Point a, Point b, Point p) {
    return is_in_box(a, b, p) && !(p == a) && !(p == b);
}

// Where a direction lies by a path that comes from `before` and goes on to `after` at `here`.
Side side_of_path(Point before, Point here, Point after, Point p) {
    const Side turn = exact::side_of_line(before, here, after);
    const Side by_first = exact::side_of_line(before, here, p);
    const Side by_second = exact::side_of_line(here, after, p);
    if (turn == Side::on) return by_second;
    // Inside the narrow angle both agree with the turn; outside it at least one is against.
    if (by_first == turn && by_second == turn) return turn;
    const Side other = turn == Side::left ? Side::right : Side::left;
    return by_first == other || by_second == other ? other : Side::on;
}

// Collects the faults among the pairs of sides that it is shown.
class Faults {
  public:
    Faults(const Ring& ring, std::size_t most) : ring_(ring), most_(most) {}

    bool is_empty() const { return found_.empty(); }

    void look_at(std::size_t i, std::size_t j) {
        if (i > j) std::swap(i, j);
        if (j == i + 1) look_at_neighbours(i, j, {i, i + 1, j + 1});
        const bool is_around_end = i == 0 && j + 1 == ring_.size();
        if (is_around_end && j != 1) look_at_neighbours(i, j, {j, 0, 1});
        if (j != i + 1 && !is_around_end) look_at_strangers(i, j);
    }

    std::vector<SelfCrossing> in_any_order() { return std::move(found_); }
    std::vector<SelfCrossing> in_order() {
        keep_first();
        return std::move(found_);
    }

  private:
    struct Corner {
        std::size_t before;
        std::size_t here;
        std::size_t after;
    };

    Point at(std::size_t i) const { return ring_.at(i); }

    void add(std::size_t i, std::size_t j, Point place) {
        const auto [first, second] = std::minmax({ring_.origin_of(i), ring_.origin_of(j)});
        found_.push_back({first, second, place});
        // Bounds the memory where everything crosses everything.
        if (found_.size() > 2 * most_ + 64) keep_first();
    }

    void keep_first() {
        std::sort(found_.begin(), found_.end(), [](const SelfCrossing& a, const SelfCrossing& b) {
            return a.first != b.first ? a.first < b.first : a.second < b.second;
        });
        if (found_.size() > most_) found_.resize(most_);
    }

    // Neighbours share their corner; they overlap if the outline goes back on itself there.
    void look_at_neighbours(std::size_t i, std::size_t j, Corner corner) {
        const Point before = at(corner.before);
        const Point here = at(corner.here);
        const Point after = at(corner.after);
        if (exact::side_of_line(before, here, after) != Side::on) return;
        if (is_in_box(here, before, after) || is_in_box(here, after, before)) add(i, j, here);
    }

    void look_at_strangers(std::size_t i, std::size_t j) {
        const Point a = at(i);
        const Point b = at(i + 1);
        const Point c = at(j);
        const Point d = at(j + 1);
        const Side side_c = exact::side_of_line(a, b, c);
        const Side side_d = exact::side_of_line(a, b, d);
        if (side_c == side_d) {
            if (side_c == Side::on) look_at_collinear(i, j);
            return;
        }
        const Side side_a = exact::side_of_line(c, d, a);
        const Side side_b = exact::side_of_line(c, d, b);
        if (side_a == side_b) return;
        const bool has_end_on_line =
            side_a == Side::on || side_b == Side::on || side_c == Side::on || side_d == Side::on;
        if (!has_end_on_line) return add(i, j, crossing_point({a, b}, {c, d}));
        // Each corner is seen with both its sides; it counts with the side that starts there.
        if (a == c) return look_at_meeting_corners(i, j);
        if (side_a == Side::on && is_inside_stretch(c, d, a)) return add(i, j, a);
        if (side_c == Side::on && is_inside_stretch(a, b, c)) return add(i, j, c);
    }

    void look_at_collinear(std::size_t i, std::size_t j) {
        const Point a = at(i);
        const Point b = at(i + 1);
        const Point c = at(j);
        const Point d = at(j + 1);
        if ((a == c && b == d) || is_inside_stretch(c, d, a)) return add(i, j, a);
        if (a == d && b == c) return add(i, j, a);
        if (is_inside_stretch(a, b, c)) return add(i, j, c);
        if (is_inside_stretch(c, d, b)) return add(i, j, b);
        if (is_inside_stretch(a, b, d)) return add(i, j, d);
        if (a == c) look_at_meeting_corners(i, j);
    }

    void look_at_meeting_corners(std::size_t i, std::size_t j) {
        const bool is_allowed = ring_.can_touch(i) && ring_.can_touch(j);
        if (is_allowed && !is_passing_through(i, j)) return;
        add(i, j, at(i));
    }

    // Overlapping sides are faults of their own, so that a direction along a side does not matter here.
    bool is_passing_through(std::size_t i, std::size_t j) const {
        const Point before = at(ring_.before(i));
        const Point after = at(i + 1);
        const Side in = side_of_path(before, at(i), after, at(ring_.before(j)));
        const Side out = side_of_path(before, at(i), after, at(j + 1));
        return static_cast<int>(in) * static_cast<int>(out) < 0;
    }

    const Ring& ring_;
    std::size_t most_;
    std::vector<SelfCrossing> found_;
};

// A stretch of the outline along which neither x nor y turns back: it does not meet itself, and the box of
// any part of it is that of the part's ends.
struct Chain {
    Range range;
    Box box;
};

Box box_of(const Ring& ring, Range r) {
    const Point a = ring.at(r.first);
    const Point b = ring.at(r.last);
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

int quadrant(Point a, Point b) {
    return (b.x >= a.x ? 2 : 0) + (b.y >= a.y ? 1 : 0);
}

std::vector<Chain> chains_of(const Ring& ring) {
    std::vector<Chain> chains;
    chains.reserve(16);
    std::size_t first = 0;
    Point here = ring.at(1);
    int last_quadrant = quadrant(ring.at(0), here);
    for (std::size_t i = 1; i < ring.size(); ++i) {
        const Point next = ring.at(i + 1);
        const int way = quadrant(here, next);
        here = next;
        if (way == last_quadrant) continue;
        chains.push_back({{first, i}, box_of(ring, {first, i})});
        first = i;
        last_quadrant = way;
    }
    chains.push_back({{first, ring.size()}, box_of(ring, {first, ring.size()})});
    std::sort(chains.begin(), chains.end(),
              [](const Chain& a, const Chain& b) { return a.box.low.x < b.box.low.x; });
    return chains;
}

bool do_overlap(const Box& a, const Box& b) {
    return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y;
}

enum class Extent { all, first_found };

class Search {
  public:
    Search(const Ring& ring, Faults& faults, Extent extent) : ring_(ring), faults_(faults), extent_(extent) {}

    void run() {
        const std::vector<Chain> chains = chains_of(ring_);
        for (std::size_t i = 0; i < chains.size(); ++i) {
            for (std::size_t j = i + 1; j < chains.size(); ++j) {
                if (chains[j].box.low.x > chains[i].box.high.x) break;
                if (is_done()) return;
                if (do_overlap(chains[i].box, chains[j].box)) compare(chains[i], chains[j]);
            }
        }
    }

  private:
    bool is_done() const { return extent_ == Extent::first_found && !faults_.is_empty(); }

    // Precondition: the boxes overlap.
    void compare(const Chain& a, const Chain& b) {
        const std::size_t in_a = a.range.sides();
        const std::size_t in_b = b.range.sides();
        if (in_a == 1 && in_b == 1) return faults_.look_at(a.range.first, b.range.first);
        in_a < in_b ? compare_halves_of(b, a) : compare_halves_of(a, b);
    }

    void compare_halves_of(const Chain& a, const Chain& b) {
        const std::size_t middle = a.range.first + a.range.sides() / 2;
        for (const Range range : {Range{a.range.first, middle}, Range{middle, a.range.last}}) {
            if (is_done()) return;
            const Chain part{range, box_of(ring_, range)};
            if (do_overlap(part.box, b.box)) compare(part, b);
        }
    }

    const Ring& ring_;
    Faults& faults_;
    Extent extent_;
};

}  // namespace

std::vector<SelfCrossing> self_crossings(std::span<const Point> polygon,
                                         std::span<const std::size_t> may_touch, std::size_t most) {
    const Ring ring(polygon, may_touch);
    if (ring.size() == 0) return {};
    Faults faults(ring, most);
    Search(ring, faults, Extent::all).run();
    return faults.in_order();
}

std::vector<SelfCrossing> all_self_crossings(std::span<const Point> polygon) {
    const Ring ring(polygon, {});
    if (ring.size() == 0) return {};
    Faults faults(ring, std::numeric_limits<std::size_t>::max() / 4);
    Search(ring, faults, Extent::all).run();
    return faults.in_any_order();
}

bool is_simple(std::span<const Point> polygon, std::span<const std::size_t> may_touch) {
    const Ring ring(polygon, may_touch);
    if (ring.size() == 0) return true;
    Faults faults(ring, 1);
    Search(ring, faults, Extent::first_found).run();
    return faults.is_empty();
}

}  // namespace dartwright
