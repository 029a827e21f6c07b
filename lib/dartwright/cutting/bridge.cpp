#include "dartwright/cutting/bridge.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

#include "dartwright/cutting/mouth_cap.hpp"

namespace dartwright::cutting {
namespace {

template <class List>
auto part(List& list, std::size_t at) {
    return list.begin() + static_cast<std::ptrdiff_t>(at);
}

void append(SidedLine& to, const SidedLine& from, std::size_t first, std::size_t last) {
    to.points.insert(to.points.end(), part(from.points, first), part(from.points, last));
    to.sides.insert(to.sides.end(), part(from.sides, first), part(from.sides, last));
}

// Beside no allowance the mouths of darts in a row meet in a point.
bool is_doubled_at_end(const std::vector<Point>& points) {
    return points.size() > 1 && points[points.size() - 2] == points.back();
}
void leave_out_first_of_last_two(SidedLine& line) {
    const CutSide side = line.sides.back();
    line.pop_back();
    line.sides.back() = side;
}

// Where the side from the point before the ray to that beyond it comes over it.
std::optional<Point> place_on(const Ray& ray, Point before, Point beyond) {
    const double from = aside(ray, before);
    const double to = aside(ray, beyond);
    if (!(from <= 0 && to > 0)) return std::nullopt;
    const Point place = between(before, beyond, from / (from - to));
    if (dot(ray.along, place - ray.from) < 0) return std::nullopt;
    return place;
}

// The line comes back over the ray at the point `back`: leaves out what lies beyond the ray before it and
// before the ray after it, so that the line goes along the ray instead.
void meet_on(const Ray& ray, SidedLine& line, std::size_t back, std::size_t dart) {
    std::size_t beyond = back;
    while (beyond > 1 && aside(ray, line.points[beyond - 1]) > 0) --beyond;
    std::size_t before = back;
    while (before + 2 < line.size() && aside(ray, line.points[before + 1]) <= 0) ++before;
    if (beyond == back || aside(ray, line.points[back]) > 0) return;
    const auto first = place_on(ray, line.points[beyond - 1], line.points[beyond]);
    const auto second = place_on(ray, line.points[before], line.points[before + 1]);
    if (!first || !second) return;
    const CutSide side = line.sides[before];
    line.points[beyond] = *first;
    line.sides[beyond] = {CutPart::mouth, dart, 0};
    line.points[beyond + 1] = *second;
    line.sides[beyond + 1] = side;
    line.points.erase(part(line.points, beyond + 2), part(line.points, before + 1));
    line.sides.erase(part(line.sides, beyond + 2), part(line.sides, before + 1));
}

}  // namespace

Bridged bridged(const Piece& piece, const RawLine& raw, const CuttingRequest& request) {
    Bridged out;
    PressesOfPiece presses(piece);
    std::vector<std::size_t> mouth_at(raw.mouths.size());
    std::size_t laid = 0;
    for (std::size_t k = 0; k < raw.mouths.size(); ++k) {
        MouthCap cap = mouth_cap(piece, raw, k, request, presses);
        const std::size_t next = raw.mouths[k].at + 1;
        append(out.line, raw.line, laid, next);
        if (k > 0 && is_doubled_at_end(out.line.points)) leave_out_first_of_last_two(out.line);
        mouth_at[k] = out.line.size() - 1;
        for (const RawPoint& point : cap.between) out.line.add(point.at, point.side);
        laid = next;
        out.darts.push_back(std::move(cap.dart));
        std::move(cap.notes.begin(), cap.notes.end(), std::back_inserter(out.notes));
    }
    append(out.line, raw.line, laid, raw.line.size());
    // From the last on, so that the places of those before it stay.
    for (std::size_t k = raw.mouths.size(); k-- > 0;) {
        const RawMouth& mouth = raw.mouths[k];
        if (mouth.meets_last) meet_on(*mouth.meets_last, out.line, mouth_at[k], mouth.item);
    }
    return out;
}

}  // namespace dartwright::cutting
