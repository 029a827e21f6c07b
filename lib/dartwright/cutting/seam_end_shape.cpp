#include "dartwright/cutting/seam_end_shape.hpp"

#include "dartwright/pattern/mirrored.hpp"

namespace dartwright::cutting {
namespace {

// The shape's first point; the neighbour without allowance is met at the corner itself.
std::optional<ChainMeeting> seam_on_neighbour(const SeamEnd& seam, double reach_mm) {
    if (seam.other.at(0) == seam.corner) return ChainMeeting{0, seam.corner};
    return meeting_of({seam.corner, seam.along}, seam.other, reach_mm);
}

// Outwards along the mirror image as far as the seam's width; empty if it does not go so far.
std::vector<Point> mirrored_to_width(const SeamEnd& seam, const ChainMeeting& start) {
    const MirrorLine fold{seam.corner, seam.along};
    const auto depth = [&](Point p) { return dot(p - seam.corner, seam.outside); };
    std::vector<Point> out{start.place};
    for (std::size_t k = start.side; k < seam.other.size(); ++k) {
        const Point next = mirrored(fold, seam.other.at(k));
        const double before = depth(out.back());
        const double after = depth(next);
        if (after >= seam.width_mm) {
            out.push_back(between(out.back(), next, (seam.width_mm - before) / (after - before)));
            return out;
        }
        out.push_back(next);
    }
    return {};
}

// Where the mirror image, coming in from its outer end, crosses the seam's own line.
bool trim_own_line(const SeamEnd& seam, SeamEndShape& shape) {
    std::vector<Point>& path = shape.from_seam;
    for (std::size_t k = path.size(); k-- > 1;) {
        for (std::size_t side = 1; side <= seam.own.sides_to_trim(); ++side) {
            const Point a = seam.own.at(side - 1);
            const Vector ab = seam.own.at(side) - a;
            const Vector cd = path[k] - path[k - 1];
            const double turn = cross(ab, cd);
            if (turn == 0) continue;
            const double on_own = cross(path[k - 1] - a, cd) / turn;
            const double on_path = cross(path[k - 1] - a, ab) / turn;
            const bool is_crossing = on_own >= 0 && on_own <= 1 && on_path >= 0 && on_path <= 1 + 1e-9;
            if (!is_crossing) continue;
            path.resize(k);
            path.push_back(a + on_own * ab);
            shape.own_side = side;
            return true;
        }
    }
    return false;
}

}  // namespace

std::optional<SeamEndShape> squared_end(const SeamEnd& seam, double reach_mm) {
    const auto met = seam_on_neighbour(seam, reach_mm);
    if (!met) return std::nullopt;
    return SeamEndShape{{met->place, met->place + seam.width_mm * seam.outside}, met->side, 0};
}

std::optional<SeamEndShape> mirrored_end(const SeamEnd& seam, double reach_mm) {
    const auto met = seam_on_neighbour(seam, reach_mm);
    if (!met) return std::nullopt;
    SeamEndShape shape{mirrored_to_width(seam, *met), met->side, 0};
    if (shape.from_seam.empty()) return std::nullopt;
    const bool is_beyond_end = dot(shape.from_seam.back() - seam.corner, seam.along) >= 0;
    if (!is_beyond_end && !trim_own_line(seam, shape)) return std::nullopt;
    return shape;
}

}  // namespace dartwright::cutting
