#include "dartwright/darts/separating/separation.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/separating/rounded_corners.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

std::size_t before(const Outline& outline, std::size_t item) {
    return (item + outline.items.size() - 1) % outline.items.size();
}

// The edges on both sides of a place in the outline, darts there passed by.
struct Neighbours {
    std::string before;
    std::string after;
};
Neighbours neighbours_of(const Outline& outline, std::size_t first, std::size_t end) {
    while (!outline.items[first].as_edge()) first = before(outline, first);
    while (!outline.items[end].as_edge()) end = (end + 1) % outline.items.size();
    return {outline.items[first].as_edge()->edge, outline.items[end].as_edge()->edge};
}

Neighbours beside_dart(const TargetCut& cut) {
    return neighbours_of(cut.outline, before(cut.outline, cut.dart),
                         (cut.dart + 1) % cut.outline.items.size());
}

Neighbours beside_target(const TargetCut& cut) {
    return neighbours_of(cut.outline, before(cut.outline, cut.target), cut.target);
}

// A leg of the seam, towards the pivot or away from it.
ChainItem leg(const std::string& edge, PairOfPoints ends, const Shape& shape) {
    return {ends.first, {EdgeItem{edge, shape, 0}, ends.second}, 1e9};
}

Shape leg_shape(const DartItem& dart, std::size_t which) {
    if (!dart.legs || !(dart.point == dart.turning_point())) return StraightShape{};
    return CubicShape{(*dart.legs)[which]};
}

// Both mouth ends at the mean of the legs, where legs differ within their tolerance.
DartFigures evened(DartFigures f, const std::string& name, Notes notes) {
    const double difference = std::abs(f.pivot_leg_a - f.pivot_leg_b);
    if (difference <= sum_rounding_mm) return f;
    const double mean = (f.pivot_leg_a + f.pivot_leg_b) / 2;
    f.a = f.pivot + mean * unit(f.a - f.pivot);
    f.b = f.pivot + mean * unit(f.b - f.pivot);
    if (difference >= least_told_mm) {
        notes.push_back("the legs of " + quoted(name) + " differed by " + difference_told(difference, 3) +
                        "; both ends were brought to their mean");
    }
    return f;
}

void note_legs_redrawn(const DartItem& dart, Notes notes) {
    const double back_off = distance(dart.point, dart.turning_point());
    if (back_off == 0) return;
    if (dart.legs) notes.push_back("the curved legs of " + quoted(dart.name) + " are drawn straight");
    notes.push_back("the legs of " + quoted(dart.name) + " were redrawn to the pivot, " +
                    measure_told(back_off) + " beyond its point");
}

DartFigures seam_dart(const Outline& outline, std::size_t item, Notes notes) {
    const DartItem& dart = *outline.items[item].as_dart();
    note_legs_redrawn(dart, notes);
    return evened(figures_of(outline, item), dart.name, notes);
}

// The longer of the two names is the one to shorten.
std::string stretch_name(const std::string& seam, const std::string& edge, const std::string& after) {
    return edge.size() > seam.size() ? derived_name(seam + " at ", edge, after)
                                     : derived_name("", seam, " at " + edge + after);
}

// Names of the seam's two stretches: at the dart's mouth, and at its other end.
struct StretchNames {
    std::string at_dart;
    std::string at_target;
};
StretchNames stretch_names(const TargetCut& cut, const std::string& seam) {
    const Neighbours dart = beside_dart(cut);
    const Neighbours target = beside_target(cut);
    const std::string& other = target.before == dart.before ? target.after : target.before;
    return {stretch_name(seam, dart.before, ""), stretch_name(seam, other, other != dart.before ? "" : " 2")};
}

double leg_length(const ChainItem& item) {
    return length(curves_of(*item.item.as_edge(), item.start, item.item.to).front());
}

struct SeamLegs {
    std::array<Chain, 2> chains;  ///< of each part, in its outline's direction
};

SeamLegs seam_legs(const Separation& s, const StretchNames& names) {
    const DartItem& dart = *s.cut.outline.items[s.cut.dart].as_dart();
    const DartItem* with = s.cut.outline.items[s.cut.target].as_dart();
    const Point pivot = s.dart.pivot;
    const Point into = s.with ? s.with->a : s.target;
    const Point out_of = s.with ? s.with->b : s.target;
    const Shape in_shape = with ? leg_shape(*with, 0) : Shape{StraightShape{}};
    const Shape out_shape = with ? leg_shape(*with, 1) : Shape{StraightShape{}};
    return {{Chain{leg(names.at_target, {into, pivot}, in_shape),
                   leg(names.at_dart, {pivot, s.dart.b}, leg_shape(dart, 1))},
             Chain{leg(names.at_dart, {s.dart.a, pivot}, leg_shape(dart, 0)),
                   leg(names.at_target, {pivot, out_of}, out_shape)}}};
}

bool is_straight(const ChainItem& item) {
    return std::holds_alternative<StraightShape>(item.item.as_edge()->shape);
}

StraightCorner corner_between(const Chain& legs) {
    const Point corner = legs[0].item.to;
    return {corner, unit(corner - legs[0].start), unit(legs[1].item.to - corner)};
}

/// A seam whose corner turns by more than this is two seams, degrees. Our choice.
constexpr double sharpest_corner_deg = 120;

void refuse_rounding(const SeamLegs& legs, double round_mm) {
    if (!(round_mm > 0)) {
        throw BadWords("the rounding is " + asked_told(round_mm) + "; expected more than 0");
    }
    for (const Chain& chain : legs.chains) {
        for (const ChainItem& each : chain) {
            if (!is_straight(each)) {
                throw Impossible(
                    "the dart's legs are curved, so that its seam has no straight corner to round",
                    "leave the rounding out");
            }
            const double leg_mm = leg_length(each);
            if (leg_mm <= round_mm) {
                throw Impossible("the rounding is longer than the seam from the pivot to its end (" +
                                     measure_told(leg_mm) + ")",
                                 "round over less than that");
            }
        }
        if (degrees(turn_at(corner_between(chain))) > sharpest_corner_deg) {
            throw Impossible("the seam turns back on itself at the pivot", "end it at another place");
        }
    }
}

Chain rounded(const Chain& legs, const Cubic& curve, const std::string& edge) {
    return {leg(edge, {legs[0].start, curve.p[0]}, StraightShape{}),
            leg(edge, {curve.p[0], curve.p[3]}, CubicShape{{curve.p[1], curve.p[2]}}),
            leg(edge, {curve.p[3], legs[1].item.to}, StraightShape{})};
}

SeamLegs rounded(const SeamLegs& legs, const SeamWanted& wanted) {
    refuse_rounding(legs, *wanted.round_mm);
    const RoundedCorners corners =
        rounded_corners(corner_between(legs.chains[0]), corner_between(legs.chains[1]), *wanted.round_mm);
    return {{rounded(legs.chains[0], corners.curves[0], wanted.seam),
             rounded(legs.chains[1], corners.curves[1], wanted.seam)}};
}

// The whole's items of each part, ending and beginning where the seam's legs do.
std::array<Chain, 2> own_items(const Separation& s) {
    PartsOfCut parts = parts_of(s.cut);
    if (s.with) parts.before_dart.erase(parts.before_dart.begin());
    if (parts.after_dart.empty() || parts.before_dart.empty()) {
        throw Impossible("there is no edge between the two ends of the seam", "end it at another place");
    }
    start_at(parts.after_dart, s.dart.b);
    end_at(parts.before_dart, s.dart.a);
    if (s.with) {
        end_at(parts.after_dart, s.with->a);
        start_at(parts.before_dart, s.with->b);
    }
    return {parts.after_dart, parts.before_dart};
}

void refuse_divided_run(const Outline& outline) {
    std::vector<std::string> names;
    for (const OutlineItem& item : outline.items) {
        const EdgeItem* edge = item.as_edge();
        if (edge && (names.empty() || names.back() != edge->edge)) names.push_back(edge->edge);
    }
    if (names.size() > 1 && names.front() == names.back()) names.pop_back();
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (std::find(names.begin() + static_cast<std::ptrdiff_t>(i) + 1, names.end(), names[i]) ==
            names.end())
            continue;
        throw Impossible("both ends of the seam lie in " + quoted(names[i]) +
                             ", which one part would then have in two places",
                         "end it at a place on another edge");
    }
}

Outline outline_with(Chain own, const Chain& seam) {
    own.insert(own.end(), seam.begin(), seam.end());
    return outline_of(std::move(own));
}

void refuse_bad_part(const Outline& outline) {
    const Sentence trouble = trouble_with(wedge_polygon(outline), outline);
    if (!trouble.empty())
        throw Impossible("a part would not be a fair one: " + trouble, "end the seam elsewhere");
}

SeparatedPart part_of(const Chain& own, const Chain& straight, const Chain& seam) {
    SeparatedPart part;
    const Outline plain = outline_with(own, straight);
    refuse_divided_run(plain);
    refuse_bad_part(plain);
    part.polygon = flat_outline(plain, DartsDrawn::to_pivots, decision_chord_error_mm).points;
    part.outline = outline_with(own, seam);
    refuse_bad_part(part.outline);
    part.runs = runs_of(part.outline);
    for (const ChainItem& each : seam) {
        const std::string& edge = each.item.as_edge()->edge;
        if (part.seam_edges.empty() || part.seam_edges.back() != edge) part.seam_edges.push_back(edge);
    }
    return part;
}

void refuse_known_edges(const Separation& s) {
    for (const SeparatedPart& part : s.parts) {
        for (const std::string& edge : part.seam_edges) {
            if (!find_run(s.whole_runs, edge)) continue;
            throw BadWords("there is an edge " + quoted(edge) +
                           " already; expected another name for the seam");
        }
    }
}

// Whether the item of the cut's outline is of the part that follows the dart.
bool is_after_dart(const TargetCut& cut, std::size_t item) {
    const std::size_t n = cut.outline.items.size();
    const auto steps = [&](std::size_t to) { return (to + n - cut.dart) % n; };
    return steps(item) < steps(cut.target);
}

}  // namespace

Separation separated(const TargetCut& cut, const SeamWanted& wanted, Notes notes) {
    Separation s;
    s.cut = cut;
    s.whole_runs = runs_of(cut.outline);
    s.target = start_of_item(cut.outline, cut.target);
    s.dart = seam_dart(cut.outline, cut.dart, notes);
    if (cut.outline.items[cut.target].as_dart()) s.with = seam_dart(cut.outline, cut.target, notes);
    const Neighbours dart = beside_dart(cut);
    const Neighbours target = beside_target(cut);
    s.is_dart_in_corner = dart.before != dart.after;
    s.is_target_in_corner = target.before != target.after;
    const std::array<Chain, 2> own = own_items(s);
    const SeamLegs straight = seam_legs(s, stretch_names(cut, wanted.seam));
    s.target_leg_mm = leg_length(straight.chains[0][0]);
    s.dart_leg_mm = leg_length(straight.chains[0][1]);
    const SeamLegs legs = wanted.round_mm ? rounded(straight, wanted) : straight;
    for (std::size_t k = 0; k < 2; ++k) s.parts[k] = part_of(own[k], straight.chains[k], legs.chains[k]);
    if (wanted.round_mm) {
        s.rounded_off_mm = s.dart_leg_mm + s.target_leg_mm - find_run(s.parts[0].runs, wanted.seam)->length;
    }
    // The part that follows the dart has the seam from its far end.
    std::reverse(s.parts[0].seam_edges.begin(), s.parts[0].seam_edges.end());
    refuse_known_edges(s);
    return s;
}

std::vector<PartOfRun> parts_of_run(const Separation& s, const std::string& edge) {
    const Run& whole = *find_run(s.whole_runs, edge);
    const std::size_t first = is_after_dart(s.cut, whole.items.front()) ? 0 : 1;
    const std::size_t last = is_after_dart(s.cut, whole.items.back()) ? 0 : 1;
    const Run* begins = find_run(s.parts[first].runs, edge);
    if (first == last) return {{first, begins, true, true, 0}};
    return {{first, begins, true, false, 0},
            {last, find_run(s.parts[last].runs, edge), false, true, begins->length}};
}

}  // namespace dartwright
