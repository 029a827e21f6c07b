#include "dartwright/cutting/clean_up.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/predicates.hpp"

namespace dartwright::cutting {
namespace {

std::vector<Point> places_of(const std::vector<RawPoint>& line) {
    std::vector<Point> out;
    out.reserve(line.size());
    for (const RawPoint& point : line) out.push_back(point.at);
    return out;
}

// Whether the line goes to b and straight back.
bool is_spike(Point a, Point b, Point c) {
    const Vector back = a - b;
    const Vector on = c - b;
    if (dot(back, on) <= 0) return false;
    const double longer = std::sqrt(std::max(squared_norm(back), squared_norm(on)));
    return std::abs(cross(back, on)) <= nudge_mm * longer;
}

// Nudged apart, the two sides of a spike could leave a crack where the line winds round once.
std::vector<RawPoint> without_spikes(const std::vector<RawPoint>& line) {
    std::vector<RawPoint> out;
    out.reserve(line.size());
    for (const RawPoint& point : line) {
        while (out.size() > 1 && is_spike(out[out.size() - 2].at, out.back().at, point.at)) out.pop_back();
        out.push_back(point);
    }
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
std::vector<RawPoint> without_slits(const std::vector<RawPoint>& line) {
    const auto lowest = std::min_element(line.begin(), line.end(), [](const RawPoint& a, const RawPoint& b) {
        return a.at.y != b.at.y ? a.at.y < b.at.y : a.at.x < b.at.x;
    });
    const auto first = static_cast<std::size_t>(lowest - line.begin());
    std::vector<RawPoint> out;
    out.reserve(line.size());
    for (std::size_t i = 0; i < line.size(); ++i) {
        const RawPoint& point = line[(first + i) % line.size()];
        while (out.size() > 1 && is_slit(out[out.size() - 2].at, out.back().at, point.at)) out.pop_back();
        out.push_back(point);
    }
    return out.size() == line.size() || out.size() < 3 || !is_simple(places_of(out)) ? line : out;
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
// million.
std::vector<Point> nudged(std::vector<Point> points, std::uint64_t round) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        const std::uint64_t seed = 2 * (i + round * points.size());
        points[i] = points[i] + Vector{nudge_mm * scattered(seed), nudge_mm * scattered(seed + 1)};
    }
    return points;
}

// Where one side is crossed by another.
struct Crossing {
    std::size_t side = 0;
    double along = 0;      // the square of the distance from the side's start
    std::size_t twin = 0;  // the same crossing seen from the other side, as an index
    Point place;
};

// Both views of every crossing, in the order in which the line comes to them.
std::vector<Crossing> crossings_of(const std::vector<Point>& points) {
    constexpr std::size_t all = static_cast<std::size_t>(-1) / 4;
    const std::vector<SelfCrossing> found = self_crossings(points, {}, all);
    std::vector<Crossing> out;
    out.reserve(2 * found.size());
    std::vector<std::size_t> order;
    for (std::size_t k = 0; k < found.size(); ++k) {
        for (const std::size_t side : {found[k].first, found[k].second}) {
            out.push_back({side, squared_norm(found[k].place - points[side]), k, found[k].place});
        }
    }
    std::sort(out.begin(), out.end(), [](const Crossing& a, const Crossing& b) {
        return a.side != b.side ? a.side < b.side : a.along < b.along;
    });
    std::vector<std::size_t> first(found.size(), out.size());
    for (std::size_t i = 0; i < out.size(); ++i) {
        const std::size_t k = out[i].twin;
        if (first[k] == out.size()) {
            first[k] = i;
        } else {
            out[i].twin = first[k];
            out[first[k]].twin = i;
        }
    }
    return out;
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

// From an outermost point along the line. Nothing lies outside it, so that every crossing leads from the line
// that is come along to the one that crosses it: going on would lead inside.
std::vector<RawPoint> walked_from(std::size_t start, const std::vector<RawPoint>& line,
                                  const std::vector<Point>& points, const std::vector<Crossing>& crossings,
                                  const std::vector<std::size_t>& first_on) {
    std::vector<RawPoint> out;
    out.reserve(points.size());
    std::size_t side = start;
    out.push_back({points[side], line[side].side});
    std::size_t next = first_on[side];
    const std::size_t most = 2 * (points.size() + crossings.size());
    while (out.size() <= most) {
        if (next < crossings.size() && crossings[next].side == side) {
            const Crossing& over = crossings[crossings[next].twin];
            side = over.side;
            out.push_back({over.place, line[side].side});
            next = crossings[next].twin + 1;
            continue;
        }
        side = side + 1 == points.size() ? 0 : side + 1;
        if (side == start) break;
        out.push_back({points[side], line[side].side});
        next = first_on[side];
    }
    return out;
}

// What lies beyond the centre of a tight bend may hang on by a point, and nothing by less: of the parts, the
// largest is that of the piece.
std::vector<RawPoint> walked(const std::vector<RawPoint>& line, const std::vector<Point>& points) {
    const std::vector<Crossing> crossings = crossings_of(points);
    std::vector<std::size_t> first_on(points.size() + 1, crossings.size());
    for (std::size_t i = crossings.size(); i-- > 0;) first_on[crossings[i].side] = i;
    std::vector<RawPoint> best;
    double most = -INFINITY;
    const double enough = signed_area(points) / 2;
    for (const Vector way : {Vector{0, -1}, Vector{0, 1}, Vector{-1, 0}, Vector{1, 0}, Vector{-1, -1},
                             Vector{1, -1}, Vector{1, 1}, Vector{-1, 1}}) {
        const std::size_t start = farthest(points, way);
        if (!turns_left(points, start)) continue;
        std::vector<RawPoint> part = walked_from(start, line, points, crossings, first_on);
        const double area = signed_area(places_of(part));
        if (area <= most) continue;
        most = area;
        best = std::move(part);
        if (most >= enough) break;
    }
    return best;
}

// What goes round the stitching line encloses no less than it does; the clean-up of an outline that crosses
// itself may have come round a loop of it instead, or round a part that hangs on by a point.
bool may_go_round(const std::vector<RawPoint>& line, const Piece& piece) {
    double around = 0;
    for (std::size_t i = 0; i < line.size(); ++i)
        around += distance(line[i].at, line[i + 1 == line.size() ? 0 : i + 1].at);
    const double stitched = signed_area(piece.outline, DartsDrawn::to_points);
    return signed_area(places_of(line)) >= stitched - around * cutting_line_error_mm;
}

[[noreturn]] void refuse_unclean(const Piece& piece) {
    const FlatOutline flat = flat_outline(piece.outline, DartsDrawn::to_points, decision_chord_error_mm);
    if (is_simple(flat.points)) throw NotCleaned(piece.name);
    throw Impossible(
        "the outline of " + quoted(piece.name) + " crosses itself, so that no line goes round it",
        "mend the outline first; a check says where it crosses");
}

}  // namespace

std::optional<std::vector<RawPoint>> outer_line(const std::vector<RawPoint>& line, std::size_t rounds) {
    std::vector<RawPoint> out = without_spikes(line);
    // A crossing is rounded, so that sides nearly along each other may cross anew within rounding.
    for (std::size_t round = 0; round < rounds; ++round) {
        out = walked(out, nudged(places_of(out), round));
        if (is_simple(places_of(out))) return without_slits(out);
    }
    return std::nullopt;
}

std::vector<RawPoint> cleaned(const Piece& piece, const std::vector<RawPoint>& line, std::size_t rounds) {
    auto out = outer_line(line, rounds);
    if (!out || !may_go_round(*out, piece)) refuse_unclean(piece);
    return std::move(*out);
}

}  // namespace dartwright::cutting
