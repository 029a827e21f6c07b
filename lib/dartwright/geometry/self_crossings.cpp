#include <algorithm>
#include <limits>

#include "dartwright/geometry/all_self_crossings.hpp"
#include "dartwright/geometry/curve.hpp"
#include "dartwright/geometry/orientation.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright {
namespace {

// One decision, which is quicker than to foresee as many as there are questions.
template <class... Bools>
bool are_all(Bools... each) {
    return static_cast<bool>((each & ...));
}

// The polygon without neighbouring repetitions; its first vertex follows the last.
class Ring {
  public:
    explicit Ring(std::span<const Point> polygon) : points_(polygon) {}
    Ring(const Ring&) = delete;
    Ring& operator=(const Ring&) = delete;

    // Nearly no polygon has any, and none is copied before one is found.
    void drop_repetitions(std::span<const std::size_t> may_touch) {
        std::vector<char> can_touch(may_touch.empty() ? 0 : points_.size());
        for (const std::size_t i : may_touch) can_touch.at(i) = 1;
        kept_.reserve(points_.size());
        origin_.reserve(points_.size());
        for (std::size_t i = 0; i < points_.size(); ++i) {
            const std::size_t next = i + 1 == points_.size() ? 0 : i + 1;
            // A side starts at the last of a row of equal vertices.
            if (points_[i] == points_[next]) {
                if (!can_touch.empty() && can_touch[i]) can_touch[next] = 1;
                continue;
            }
            kept_.push_back(points_[i]);
            origin_.push_back(i);
        }
        for (const std::size_t i : origin_)
            if (!can_touch.empty()) can_touch_.push_back(can_touch[i]);
        points_ = kept_;
    }

    std::span<const Point> points() const { return points_; }
    std::size_t size() const { return points_.size(); }
    Point at(std::size_t i) const { return points_[i == points_.size() ? 0 : i]; }
    std::size_t before(std::size_t i) const { return i == 0 ? size() - 1 : i - 1; }
    /// The index in the polygon given.
    std::size_t origin_of(std::size_t i) const { return origin_.empty() ? i : origin_[i]; }
    bool can_touch(std::size_t i) const { return !can_touch_.empty() && can_touch_[i]; }

  private:
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

    void look_at(std::size_t one, std::size_t other) {
        const auto [i, j] = std::minmax(one, other);
        if (j == i + 1) look_at_neighbours(i, j, {i, i + 1, j + 1});
        const bool is_around_end = i == 0 && j + 1 == ring_.size();
        if (is_around_end && j != 1) look_at_neighbours(i, j, {j, 0, 1});
        if (j != i + 1 && !is_around_end) look_at_strangers(i, j);
    }

    std::vector<MetSides> in_any_order() { return std::move(found_); }
    std::vector<SelfCrossing> in_order(std::span<const Point> polygon) {
        keep_first();
        std::vector<SelfCrossing> out;
        out.reserve(found_.size());
        for (const MetSides& met : found_) out.push_back({met.first, met.second, place_of(met, polygon)});
        return out;
    }

  private:
    struct Corner {
        std::size_t before;
        std::size_t here;
        std::size_t after;
    };

    Point at(std::size_t i) const { return ring_.at(i); }

    void add(std::size_t i, std::size_t j, Point touch) {
        MetSides& made = add_crossing(i, j);
        made.is_crossing = false;
        made.touch = touch;
    }

    MetSides& add_crossing(std::size_t i, std::size_t j) {
        // Bounds the memory where everything crosses everything.
        if (found_.size() > 2 * most_ + 64) keep_first();
        if (found_.empty()) found_.reserve(std::min(most_, usual_));
        MetSides& made = found_.emplace_back();
        made.first = ring_.origin_of(i);
        made.second = ring_.origin_of(j);
        made.is_crossing = true;
        return made;
    }

    void keep_first() {
        std::sort(found_.begin(), found_.end(), [](const MetSides& a, const MetSides& b) {
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

    // One decision for nearly all pairs, for which of their ends lies on which side nobody could foretell.
    void look_at_strangers(std::size_t i, std::size_t j) {
        const Point a = at(i);
        const Point b = at(i + 1);
        const Point c = at(j);
        const Point d = at(j + 1);
        const exact::Turn to_a = exact::turn(c, d, a);
        const exact::Turn to_b = exact::turn(c, d, b);
        const exact::Turn to_c = exact::turn(a, b, c);
        const exact::Turn to_d = exact::turn(a, b, d);
        if (!are_all(to_a.is_sure(), to_b.is_sure(), to_c.is_sure(), to_d.is_sure()))
            return look_closely_at(i, j);
        const bool is_parted = are_all(to_a.is_left() != to_b.is_left(), to_c.is_left() != to_d.is_left());
        if (is_parted) add_crossing(i, j);
    }

    void look_closely_at(std::size_t i, std::size_t j) {
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
        if (!has_end_on_line) {
            add_crossing(i, j);
            return;
        }
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

    static constexpr std::size_t usual_ = 128;

    const Ring& ring_;
    std::size_t most_;
    std::vector<MetSides> found_;
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

// Where a side or a chain leads: to the right or straight up or down, else to the left, and the same of y.
struct Way {
    bool is_right = false;
    bool is_up = false;
    friend bool operator==(const Way&, const Way&) = default;
};
Way way(Point a, Point b) {
    return {b.x >= a.x, b.y >= a.y};
}

// The last point of those to which sides of one way lead from `first` on, short of the side to the start. Of
// the four ways only that to the right and up is also that of a side without length, before which it ends.
template <bool is_right, bool is_up>
std::size_t end_of_way(std::span<const Point> points, std::size_t first) {
    std::size_t i = first;
    for (; i + 1 < points.size(); ++i) {
        const Point here = points[i];
        const Point next = points[i + 1];
        if ((next.x >= here.x) != is_right || (next.y >= here.y) != is_up) break;
        if (is_right && is_up && next == here) break;
    }
    return i;
}

// Precondition: first + 1 < points.size().
std::size_t end_of_chain(std::span<const Point> points, std::size_t first) {
    const auto [is_right, is_up] = way(points[first], points[first + 1]);
    if (is_right)
        return is_up ? end_of_way<true, true>(points, first) : end_of_way<true, false>(points, first);
    return is_up ? end_of_way<false, true>(points, first) : end_of_way<false, false>(points, first);
}

// Empty if neighbouring vertices are one.
std::vector<Range> ranges_of(std::span<const Point> points) {
    if (points.size() < 2 || points.front() == points.back()) return {};
    std::vector<Range> ranges;
    ranges.reserve(16);
    for (std::size_t first = 0; first + 1 < points.size(); first = ranges.back().last) {
        const std::size_t last = end_of_chain(points, first);
        if (last == first) return {};
        ranges.push_back({first, last});
    }
    const Range& last = ranges.back();
    const bool runs_on = way(points[last.first], points.back()) == way(points.back(), points.front());
    if (runs_on)
        ++ranges.back().last;
    else
        ranges.push_back({points.size() - 1, points.size()});
    return ranges;
}

// By their left ends; empty if neighbouring vertices are one.
std::vector<Chain> chains_of(const Ring& ring) {
    const std::vector<Range> ranges = ranges_of(ring.points());
    std::vector<Chain> chains;
    chains.reserve(ranges.size());
    for (const Range& range : ranges) chains.push_back({range, box_of(ring, range)});
    std::sort(chains.begin(), chains.end(),
              [](const Chain& a, const Chain& b) { return a.box.low.x < b.box.low.x; });
    return chains;
}

bool do_overlap_in_y(const Box& a, const Box& b) {
    return are_all(a.low.y <= b.high.y, b.low.y <= a.high.y);
}
bool do_overlap(const Box& a, const Box& b) {
    return are_all(a.low.x <= b.high.x, b.low.x <= a.high.x, a.low.y <= b.high.y, b.low.y <= a.high.y);
}

enum class Extent { all, first_found };

class Search {
  public:
    Search(const Ring& ring, Faults& faults, Extent extent) : ring_(ring), faults_(faults), extent_(extent) {}

    void run(const std::vector<Chain>& chains) {
        for (std::size_t i = 0; i < chains.size(); ++i) {
            for (std::size_t j = i + 1; j < chains.size(); ++j) {
                if (chains[j].box.low.x > chains[i].box.high.x) break;
                if (!do_overlap_in_y(chains[i].box, chains[j].box)) continue;
                compare(chains[i], chains[j]);
                if (is_done()) return;
            }
        }
    }

  private:
    bool is_done() const { return extent_ == Extent::first_found && !faults_.is_empty(); }

    static constexpr std::size_t few = 8;

    // Precondition: the boxes overlap.
    void compare(const Chain& a, const Chain& b) {
        const std::size_t in_a = a.range.sides();
        const std::size_t in_b = b.range.sides();
        if (in_a == 1 && in_b == 1) return faults_.look_at(a.range.first, b.range.first);
        if (in_b == 1 && in_a <= few) return compare_sides_of(a, b);
        if (in_a == 1 && in_b <= few) return compare_sides_of(b, a);
        in_a < in_b ? compare_halves_of(b, a) : compare_halves_of(a, b);
    }

    // A few are sooner gone through than halved.
    void compare_sides_of(const Chain& a, const Chain& side) {
        for (std::size_t i = a.range.first; i < a.range.last && !is_done(); ++i)
            if (do_overlap(box_of(ring_, {i, i + 1}), side.box)) faults_.look_at(i, side.range.first);
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

struct Wanted {
    std::size_t most = 0;
    Extent extent = Extent::all;
};

Faults faults_of(Ring& ring, std::span<const std::size_t> may_touch, const Wanted& wanted) {
    std::vector<Chain> chains;
    if (may_touch.empty()) chains = chains_of(ring);
    if (chains.empty()) {
        ring.drop_repetitions(may_touch);
        chains = chains_of(ring);
    }
    Faults faults(ring, wanted.most);
    Search(ring, faults, wanted.extent).run(chains);
    return faults;
}

}  // namespace

std::vector<SelfCrossing> self_crossings(std::span<const Point> polygon,
                                         std::span<const std::size_t> may_touch, std::size_t most) {
    Ring ring(polygon);
    return faults_of(ring, may_touch, {most, Extent::all}).in_order(polygon);
}

Point place_of(const MetSides& met, std::span<const Point> polygon) {
    if (!met.is_crossing) return met.touch;
    const auto side = [&](std::size_t i) {
        return Segment{polygon[i], polygon[i + 1 == polygon.size() ? 0 : i + 1]};
    };
    return crossing_point(side(met.first), side(met.second));
}

std::vector<MetSides> all_self_crossings(std::span<const Point> polygon) {
    Ring ring(polygon);
    return faults_of(ring, {}, {std::numeric_limits<std::size_t>::max() / 4, Extent::all}).in_any_order();
}

bool is_simple(std::span<const Point> polygon, std::span<const std::size_t> may_touch) {
    Ring ring(polygon);
    return faults_of(ring, may_touch, {1, Extent::first_found}).is_empty();
}

}  // namespace dartwright
