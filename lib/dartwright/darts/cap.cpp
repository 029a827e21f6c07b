#include "dartwright/darts/cap.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/mouth_walk.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/line_crossing.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {
namespace {

// A mouth narrower than this is shut, mm: less than any pencil shows, and enough for a direction.
constexpr double shut_mouth_mm = 1e-6;

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

// Unit, the bisector of APB; its two formulas are each good where the other loses its digits.
Vector centre_line(const DartFigures& f) {
    const Vector a = unit(f.a - f.point);
    const Vector b = unit(f.b - f.point);
    return f.sewn_angle_rad > pi / 2 ? unit(-perpendicular(b - a)) : unit(a + b);
}

FoldedHalf folded_half(const DartFigures& f, PressSide side) {
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

CoveredEdge covered_edge(MouthWalk& walk, const FoldedHalf& half) {
    CoveredEdge edge;
    bool is_own_whole = false;
    while (const auto step = walk.next()) {
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

bool is_in_fold(const Piece& piece, std::size_t dart) {
    if (!piece.cut || piece.cut->fold.empty()) return false;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run* fold = find_run(runs, piece.cut->fold);
    return fold && std::find(fold->darts.begin(), fold->darts.end(), dart) != fold->darts.end();
}

void refuse_bad_dart(const Piece& piece, std::size_t dart_item, const DartFigures& f,
                     const Tolerances& tolerances) {
    const DartItem& dart = *piece.outline.items[dart_item].as_dart();
    const double gap = gap_of(piece.outline);
    if (gap > tolerances.gap_mm) {
        throw Impossible(
            "the outline of " + quoted(piece.name) + " does not close, by " + text_of("%.1f mm", gap),
            "close it first");
    }
    if (is_in_fold(piece, dart_item)) {
        throw Impossible(quoted(dart.name) + " stands in the fold", "move it out of the fold first");
    }
    const double leg_a = distance(f.a, f.point);
    const double leg_b = distance(f.b, f.point);
    if (!(leg_a > 0 && leg_b > 0 && f.sewn_angle_rad > 0 && f.intake > shut_mouth_mm)) {
        throw Impossible("the mouth of " + quoted(dart.name) + " is shut or its legs are crossed",
                         "draw the dart again");
    }
    if (std::abs(leg_a - leg_b) > tolerances.legs_mm) {
        throw Impossible(
            "the legs of " + quoted(dart.name) + " differ by " + text_of("%.1f mm", std::abs(leg_a - leg_b)),
            "true the dart first");
    }
}

void add_notes(Cap& cap, const DartItem& dart, const CoveredEdge& edge) {
    if (dart.legs) cap.notes.push_back("the curved legs are folded as straight ones");
    if (!edge.is_met) {
        cap.notes.push_back("the edge beside " + quoted(dart.name) +
                            " does not reach the middle of the folded dart; its cap goes square across");
    } else if (cap.is_far_out) {
        cap.notes.push_back("the cap of " + quoted(dart.name) + " stands out by " +
                            text_of("%.1f mm", cap.depth_mm) + ", more than twice the dart's intake");
    }
}

}  // namespace

Cap cap_of(const Piece& piece, std::size_t dart, PressSide side, const Tolerances& tolerances) {
    const DartFigures f = figures_of(piece.outline, dart);
    const DartItem& item = *piece.outline.items[dart].as_dart();
    refuse_bad_dart(piece, dart, f, tolerances);
    const FoldedHalf half = folded_half(f, side);
    MouthWalk walk(piece, dart, side, tolerances.legs_mm);
    const CoveredEdge edge = covered_edge(walk, half);
    const std::vector<Curve> covered = edge.is_met ? edge.curves : square_across(edge, half);
    Cap cap;
    cap.side = side;
    cap.tip = half.point + dot(end_of(covered.back()) - half.point, half.laid_centre) * half.centre;
    cap.depth_mm = dot(cap.tip - middle(f.a, f.b), half.centre);
    cap.is_far_out = cap.depth_mm > far_out_share * f.intake;
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
    if (edge.is_met) cap.beside = walk.closed_darts();
    add_notes(cap, item, edge);
    return cap;
}

std::optional<Cap> pressed_cap(const Piece& piece, std::size_t dart, const Tolerances& tolerances) {
    const std::optional<PressSide> side = press_side(piece.outline, dart);
    if (!side) return std::nullopt;
    return cap_of(piece, dart, *side, tolerances);
}

std::optional<Cap> cap_if_any(const Piece& piece, std::size_t dart, const Tolerances& tolerances) {
    try {
        return pressed_cap(piece, dart, tolerances);
    } catch (const Impossible&) {
        return std::nullopt;
    }
}

}  // namespace dartwright
