#include "dartwright/darts/folding/folded_cap.hpp"

#include <algorithm>

#include "dartwright/geometry/line_crossing.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {
namespace {

// An edge that ends as near to the centre line as this meets it there, mm: a corner drawn on the line misses
// it by rounding.
constexpr double meeting_mm = 1e-9;

// An edge that hooks over the leg's line by no more than this runs along it, mm.
constexpr double along_leg_mm = 1e-6;

// A tip that stands out by more than so many intakes is a spike. A straight edge makes one where it meets the
// leg at more than 166 degrees; in the corners of a garment it may well be one intake.
constexpr double far_out_share = 2;

// The half of the dart that lies on the cloth when it is folded: the sector at the point between the leg and
// the place where the centre line comes to lie.
struct FoldedHalf {
    Point point;
    Vector leg;          // unit, to the mouth end on the press side
    Vector centre;       // unit, the dart's centre line
    Vector laid_centre;  // unit, where the centre line lies when folded
    Point mouth_end;     // on the press side
    Point other_end;
    double sign = 1;  // -1 where the sector lies anticlockwise of the leg
};

FoldedHalf folded_half(const FoldedDart& f, PressSide side) {
    const bool is_before = side == PressSide::before;
    FoldedHalf half;
    half.point = f.point;
    half.mouth_end = is_before ? f.a : f.b;
    half.other_end = is_before ? f.b : f.a;
    half.leg = unit(half.mouth_end - f.point);
    half.centre = centre_line(f);
    half.laid_centre = unit(2 * dot(half.centre, half.leg) * half.leg - half.centre);
    half.sign = is_before ? 1 : -1;
    return half;
}

// The edge as far as the folded dart covers it, or what is to be done without.
struct CoveredEdge {
    std::vector<Curve> curves;       // from the mouth end on
    std::vector<Curve> of_own_edge;  // before the first corner
    bool is_met = false;
    bool is_left = false;  // over the leg's line
};

// Whether the curve meets the centre line, or leaves the sector over the leg; appends what is before.
void follow(CoveredEdge& edge, const Curve& curve, const FoldedHalf& half) {
    const Vector outwards = half.sign * perpendicular(half.leg);
    const DirectedLine centre{half.point, half.sign * half.laid_centre};
    const DirectedLine leg{half.point + along_leg_mm * outwards, -half.sign * half.leg};
    std::optional<double> meeting = first_meeting(curve, centre);
    const double left_at_end = cross(centre.along, end_of(curve) - centre.at);
    if (!meeting && left_at_end <= meeting_mm) meeting = 1;
    const std::optional<double> leaving = first_meeting(curve, leg);
    if (leaving && (!meeting || *leaving < *meeting)) {
        edge.is_left = true;
    } else if (meeting) {
        if (*meeting > 0) edge.curves.push_back(part_between(curve, 0, *meeting));
        // A mouth end on the laid centre line leaves nothing to mirror.
        edge.is_met = !edge.curves.empty();
        edge.is_left = !edge.is_met;
    } else {
        edge.curves.push_back(curve);
    }
}

CoveredEdge covered_edge(const EdgeBesideMouth& next, const FoldedHalf& half) {
    CoveredEdge edge;
    bool is_own_whole = false;
    while (const auto step = next()) {
        if (!step->is_of_own_edge && !is_own_whole) {
            is_own_whole = true;
            edge.of_own_edge = edge.curves;
        }
        follow(edge, step->curve, half);
        if (edge.is_met || edge.is_left) return edge;
    }
    return edge;
}

// Square across from the end of the own edge as far as that lies under the dart.
std::vector<Curve> square_across(const CoveredEdge& edge, const FoldedHalf& half) {
    std::vector<Curve> out = edge.of_own_edge;
    if (!out.empty() && !(dot(end_of(out.back()) - half.point, half.laid_centre) > 0)) out.clear();
    const Point end = out.empty() ? half.mouth_end : end_of(out.back());
    const double along = dot(end - half.point, half.laid_centre);
    out.push_back(Line{end, half.point + along * half.laid_centre});
    return out;
}

// The half of the cap beside the press side: the covered edge mirrored in the leg, its ends put exactly.
std::vector<Curve> first_half_of(std::vector<Curve> curves, const FoldedHalf& half, Point tip) {
    for (Curve& curve : curves) curve = mirrored({half.point, half.leg}, curve);
    curves.front() = with_ends(curves.front(), {half.mouth_end, end_of(curves.front())});
    curves.back() = with_ends(curves.back(), {start_of(curves.back()), tip});
    return curves;
}

std::vector<Curve> second_half_of(const std::vector<Curve>& first, const FoldedHalf& half) {
    std::vector<Curve> curves;
    for (auto curve = first.rbegin(); curve != first.rend(); ++curve) {
        curves.push_back(reversed(mirrored({half.point, half.centre}, *curve)));
    }
    curves.front() = with_ends(curves.front(), {end_of(first.back()), end_of(curves.front())});
    curves.back() = with_ends(curves.back(), {start_of(curves.back()), half.other_end});
    return curves;
}

std::vector<Curve> reversed_chain(const std::vector<Curve>& chain) {
    std::vector<Curve> out;
    for (auto curve = chain.rbegin(); curve != chain.rend(); ++curve) out.push_back(reversed(*curve));
    return out;
}

}  // namespace

// Its two formulas are each good where the other loses its digits.
Vector centre_line(const FoldedDart& f) {
    const Vector a = unit(f.a - f.point);
    const Vector b = unit(f.b - f.point);
    return f.sewn_angle_rad > pi / 2 ? unit(-perpendicular(b - a)) : unit(a + b);
}

FoldedCap folded_cap(const FoldedDart& dart, PressSide side, const EdgeBesideMouth& next) {
    const FoldedHalf half = folded_half(dart, side);
    const CoveredEdge edge = covered_edge(next, half);
    const std::vector<Curve> covered = edge.is_met ? edge.curves : square_across(edge, half);
    FoldedCap cap;
    cap.is_square = !edge.is_met;
    cap.tip = half.point + dot(end_of(covered.back()) - half.point, half.laid_centre) * half.centre;
    cap.depth_mm = dot(cap.tip - middle(dart.a, dart.b), half.centre);
    cap.is_far_out = cap.depth_mm > far_out_share * distance(dart.a, dart.b);
    std::vector<Curve> first = first_half_of(covered, half, cap.tip);
    std::vector<Curve> second = second_half_of(first, half);
    if (side == PressSide::after) {
        std::swap(first, second);
        first = reversed_chain(first);
        second = reversed_chain(second);
    }
    cap.curves_to_tip = first.size();
    cap.curves = std::move(first);
    cap.curves.insert(cap.curves.end(), second.begin(), second.end());
    return cap;
}

}  // namespace dartwright
