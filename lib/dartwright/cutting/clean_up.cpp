#include "dartwright/cutting/clean_up.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "dartwright/cutting/side_crossings.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright::cutting {
namespace {

// Whether the line goes to b and straight back.
bool is_spike(Point a, Point b, Point c) {
    const Vector back = a - b;
    const Vector on = c - b;
    if (dot(back, on) <= 0) return false;
    const double longer = std::sqrt(std::max(squared_norm(back), squared_norm(on)));
    return std::abs(cross(back, on)) <= nudge_mm * longer;
}

template <class IsLeftOut>
bool has_corner(const std::vector<Point>& points, IsLeftOut is_left_out) {
    if (points.size() < 3) return false;
    Point a = points[points.size() - 2];
    Point b = points.back();
    for (const Point c : points) {
        if (is_left_out(a, b, c)) return true;
        a = b;
        b = c;
    }
    return false;
}

// Leaves the last point out before `next`: what comes in place of its two sides belongs to the longer one.
void leave_out_last(SidedLine& line, Point next) {
    const Point last = line.points.back();
    const CutSide side = line.sides.back();
    line.pop_back();
    if (squared_norm(next - last) > squared_norm(last - line.points.back())) line.sides.back() = side;
}

// From the point `first` on, without the corners that are left out, and those that come of that.
template <class IsLeftOut>
SidedLine without_corners(const SidedLine& line, std::size_t first, IsLeftOut is_left_out) {
    SidedLine out;
    out.reserve(line.size());
    for (std::size_t i = 0; i < line.size(); ++i) {
        const std::size_t at = (first + i) % line.size();
        const Point c = line.points[at];
        while (out.size() > 1 && is_left_out(out.points[out.size() - 2], out.points.back(), c))
            leave_out_last(out, c);
        out.add(c, line.sides[at]);
    }
    return out;
}

// Points are as low as each other within so much, mm: far above rounding, which would decide on a level edge.
constexpr double as_low_mm = 1e-9;

// Of the points that are asked for the lowest; of those as low the one most to the left; 0 if there is none.
// A clean-up goes through the points from there on, so that the line is the same wherever the outline begins.
template <class IsAskedFor>
std::size_t lowest(const std::vector<Point>& points, IsAskedFor is_asked_for) {
    std::size_t best = 0;
    bool is_found = false;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Vector aside = points[i] - points[best];
        const bool is_better = aside.y < -as_low_mm || (aside.y <= as_low_mm && aside.x < 0);
        if ((is_found && !is_better) || !is_asked_for(i)) continue;
        best = i;
        is_found = true;
    }
    return best;
}

std::size_t lowest(const std::vector<Point>& points) {
    return lowest(points, [](std::size_t) { return true; });
}

// A spike may reach lower than all else.
std::size_t lowest_without_spikes(const std::vector<Point>& points) {
    const std::size_t n = points.size();
    return lowest(points, [&](std::size_t i) {
        return !is_spike(points[i == 0 ? n - 1 : i - 1], points[i], points[i + 1 == n ? 0 : i + 1]);
    });
}

// Nudged apart, the two sides of a spike could leave a crack where the line winds round once.
SidedLine without_spikes(SidedLine line) {
    if (!has_corner(line.points, is_spike)) return line;
    SidedLine out = without_corners(line, lowest_without_spikes(line.points), is_spike);
    return out.size() < 3 ? line : out;
}

// Narrower slits than the line is exact on both sides are closed: where the offsets of two curves end beside
// each other they would be cut deep into the cloth, and nobody could.
constexpr double slit_mm = 2 * cutting_line_error_mm;

bool is_slit(Point a, Point b, Point c) {
    const Vector back = a - b;
    const Vector on = c - b;
    const double turn = cross(back, on);
    if (dot(back, on) <= 0 || turn < 0) return false;
    return turn <= slit_mm * std::sqrt(std::max(squared_norm(back), squared_norm(on)));
}

// The line as it is where there is none, and where closing them would make it cross itself. Its lowest point
// lies in no slit, so that all are seen whole from there.
SidedLine without_slits(SidedLine line) {
    if (!has_corner(line.points, is_slit)) return line;
    SidedLine out = without_corners(line, lowest(line.points), is_slit);
    return out.size() == line.size() || out.size() < 3 || !is_simple(out.points) ? line : out;
}

// A number in [-1, 1] that is always the same for an index (Steele, Lea and Flood 2014, 'Fast splittable
// pseudorandom number generators', the mixing function).
double scattered(std::uint64_t index) {
    std::uint64_t z = (index + 1) * 0x9e3779b97f4a7c15U;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    z ^= z >> 31;
    return static_cast<double>(z >> 11) * 0x1p-52 - 1;
}

// No two sides of a nudged line overlap and no point lies on a side, but by a chance of one in a thousand
// million. What only touches is parted or joined by it, and counting from the lowest point does so the same
// way wherever the outline begins.
void nudge(std::vector<Point>& points, std::uint64_t round) {
    const std::size_t n = points.size();
    std::size_t i = lowest(points);
    for (std::uint64_t k = 0; k < n; ++k) {
        const std::uint64_t seed = 2 * (k + round * n);
        points[i] = points[i] + Vector{nudge_mm * scattered(seed), nudge_mm * scattered(seed + 1)};
        i = i + 1 == n ? 0 : i + 1;
    }
}

std::size_t farthest(const std::vector<Point>& points, Vector way) {
    std::size_t best = 0;
    double most = dot(way, points[0] - Point{});
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double along = dot(way, points[i] - Point{});
        if (along <= most) continue;
        most = along;
        best = i;
    }
    return best;
}

// At a farthest point that turns right a sliver is outermost that rounding turned over.
bool turns_left(const std::vector<Point>& points, std::size_t i) {
    const std::size_t n = points.size();
    const Point before = points[i == 0 ? n - 1 : i - 1];
    return cross(points[i] - before, points[i + 1 == n ? 0 : i + 1] - points[i]) > 0;
}

// A walk along the line from an outermost point. Nothing lies outside it, so that every crossing leads from
// the line that is come along to the one that crosses it: going on would lead inside.
class OuterWalk {
  public:
    OuterWalk(const SidedLine& line, const SideCrossings& crossings)
        : line_(line), crossings_(crossings), most_(2 * line.size() + 4 * crossings.size()) {}

    SidedLine from(std::size_t start) {
        out_.reserve(line_.size());
        std::size_t side = start;
        do {
            out_.add(line_.points[side], line_.sides[side]);
            if (crossings_.is_crossed(side)) side = changed_over(side);
            side = side + 1 == line_.size() ? 0 : side + 1;
        } while (side != start && out_.size() <= most_);
        return std::move(out_);
    }

  private:
    // The side on which the walk is after the crossings that it comes to.
    std::size_t changed_over(std::size_t side) {
        for (auto next = crossings_.first_on(side); next && out_.size() <= most_;) {
            const Passage over = crossings_.changed_over(*next);
            side = over.side;
            out_.add(over.place, line_.sides[side]);
            next = crossings_.after(over);
        }
        return side;
    }

    const SidedLine& line_;
    const SideCrossings& crossings_;
    std::size_t most_;
    SidedLine out_;
};

// What lies beyond the centre of a tight bend may hang on by a point, and nothing by less: of the parts, the
// largest is that of the piece.
SidedLine walked(const SidedLine& line) {
    const SideCrossings crossings(line.points);
    SidedLine best;
    double most = -INFINITY;
    const double enough = signed_area(line.points) / 2;
    for (const Vector way : {Vector{0, -1}, Vector{0, 1}, Vector{-1, 0}, Vector{1, 0}, Vector{-1, -1},
                             Vector{1, -1}, Vector{1, 1}, Vector{-1, 1}}) {
        const std::size_t start = farthest(line.points, way);
        if (!turns_left(line.points, start)) continue;
        SidedLine part = OuterWalk(line, crossings).from(start);
        const double area = signed_area(part.points);
        if (area <= most) continue;
        most = area;
        best = std::move(part);
        if (most >= enough) break;
    }
    return best;
}

double length_round(const std::vector<Point>& points) {
    double around = 0;
    for (std::size_t i = 0; i < points.size(); ++i)
        around += distance(points[i], points[i + 1 == points.size() ? 0 : i + 1]);
    return around;
}

// What goes round the stitching line encloses no less than it does; the clean-up of an outline that crosses
// itself may have come round a loop of it instead, or round a part that hangs on by a point.
bool may_go_round(const std::vector<Point>& points, const Piece& piece) {
    const double stitched = signed_area(piece.outline, DartsDrawn::to_points);
    const double enclosed = signed_area(points);
    return enclosed >= stitched || enclosed >= stitched - length_round(points) * cutting_line_error_mm;
}

[[noreturn]] void refuse_unclean(const Piece& piece) {
    const FlatOutline flat = flat_outline(piece.outline, DartsDrawn::to_points, decision_chord_error_mm);
    if (is_simple(flat.points)) throw NotCleaned(piece.name);
    throw Impossible(
        "the outline of " + quoted(piece.name) + " crosses itself, so that no line goes round it",
        "mend the outline first; a check says where it crosses");
}

}  // namespace

bool has_spike(const std::vector<Point>& points) {
    return has_corner(points, is_spike);
}

std::optional<SidedLine> outer_line(SidedLine line, std::size_t rounds) {
    line = without_spikes(std::move(line));
    // A crossing is rounded, so that sides nearly along each other may cross anew within rounding.
    for (std::size_t round = 0; round < rounds; ++round) {
        nudge(line.points, round);
        line = walked(line);
        if (is_simple(line.points)) return without_slits(std::move(line));
    }
    return std::nullopt;
}

SidedLine cleaned(const Piece& piece, SidedLine line, std::size_t rounds) {
    auto out = outer_line(std::move(line), rounds);
    if (!out || !may_go_round(out->points, piece)) refuse_unclean(piece);
    return std::move(*out);
}

}  // namespace dartwright::cutting
