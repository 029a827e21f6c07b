#include "dartwright/assessing/dart_facts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "dartwright/assessing/mouth_sides.hpp"

namespace dartwright {
namespace {

double legs_off(const DartFigures& dart) {
    return std::max(std::abs(dart.leg_a - dart.leg_b), std::abs(dart.pivot_leg_a - dart.pivot_leg_b));
}

/// Less of a turn than this says nothing of its centre, radians: a degree, as a protractor shows it.
constexpr double least_turn_rad = pi / 180;
/// A hand's tremor along what was drawn, mm: the width of a pencil's line. Larger: a pivot that was missed by
/// a narrow dart's doing passes; smaller: of a narrow dart, whose parts say little of where they turned, the
/// tremor is judged.
constexpr double tremor_mm = 0.5;

// How much of a tremor along a part is seen at a place beside it.
double reach_of(const MatchedPlaces& places, Point place) {
    double along = 0;
    Vector sum;
    for (const Point p : places.before) {
        along = std::max(along, distance(places.before.front(), p));
        sum = sum + (p - place);
    }
    const double away = norm(sum) / static_cast<double>(places.before.size());
    return away / std::max(along, tremor_mm);
}

Point centre_of(const Motion& turn) {
    // The place p with p = turn(p).
    const double a = 1 - turn.cosine;
    const double b = turn.sine;
    const double size = a * a + b * b;
    return {(a * turn.shift.x - b * turn.shift.y) / size, (b * turn.shift.x + a * turn.shift.y) / size};
}

// How the parts on both sides of a mouth were moved.
struct MovedSides {
    Motion before;
    Motion after;
    double apart_mm = 0;   // at the pivot
    double unsure_mm = 0;  // by as much they may be apart there though they were turned about it
};

// Of all that their stretches say, what brings them nearest together at the pivot: only a pivot that no
// reading of the draft leaves where it was has been missed. Where every stretch has something moved beside
// it, a leg or a corner, that is seen at the pivot too.
MovedSides moved_sides(const MovedPiece& piece, const MouthSides& sides, Point pivot) {
    std::optional<MovedSides> best;
    const PartMotions before_mouth = motions_of_part(piece, sides.before);
    const PartMotions after_mouth = motions_of_part(piece, sides.after);
    for (const Motion& before : before_mouth.all)
        for (const Motion& after : after_mouth.all) {
            const double apart = distance(apply(before, pivot), apply(after, pivot));
            if (!best || apart < best->apart_mm) best = {before, after, apart, 0};
        }
    const bool is_certain = before_mouth.is_certain && after_mouth.is_certain;
    const double moved = is_certain ? 0 : std::max(piece.legs_off_mm, most_changed_mm(piece.both));
    const double reach = 1 + reach_of(piece.parts.places[sides.before], pivot) +
                         reach_of(piece.parts.places[sides.after], pivot);
    // From either side.
    best->unsure_mm = 2 * reach * moved;
    best->apart_mm = std::max(0.0, best->apart_mm - reach * tremor_mm);
    return *best;
}

// How the part after the mouth was turned against the one before, in the place of the piece before.
void measure_turn(DartFact& fact, const MovedSides& moved) {
    const Motion turn = then(moved.after, inverse(moved.before));
    fact.turned_rad = std::abs(angle(turn));
    if (*fact.turned_rad < least_turn_rad || moved.apart_mm <= moved.unsure_mm) return;
    const Point centre = centre_of(turn);
    fact.centre = apply(moved.before, centre);
    fact.centre_off_mm = distance(centre, fact.asked->pivot);
}

// How far the line from the middle of the mouth through the point passes the pivot by.
double beside_axis(const DartFigures& dart, Point pivot) {
    const Vector along = unit(dart.point - middle(dart.a, dart.b));
    return std::abs(cross(along, pivot - dart.point));
}

// Where either part carried the pivot to, whichever is nearer to where the dart aims; the part before as a
// whole too, since by that the pivot was found in the pattern to begin with.
void measure_aim(DartFact& fact, const MovedSides& moved, const Motion& whole_before, const DartItem& item) {
    fact.aim_off_mm = std::numeric_limits<double>::infinity();
    for (const Motion& motion : {whole_before, moved.before, moved.after}) {
        const Point carried = apply(motion, fact.asked->pivot);
        // A dart that is drawn to no pivot aims at one along its centre line.
        const double off =
            item.pivot ? distance(*item.pivot, carried) : beside_axis(fact.found->figures, carried);
        if (off >= fact.aim_off_mm) continue;
        fact.aim_off_mm = off;
        fact.pivot = carried;
        fact.used_pivot = item.pivot.value_or(carried);
    }
    fact.aim_off_mm = std::max(0.0, fact.aim_off_mm - moved.unsure_mm);
}

}  // namespace

double legs_off_mm(const DartFact& fact) {
    return std::max(0.0, legs_off(fact.found->figures) - legs_off(fact.asked->dart.figures));
}

void measure_dart(DartFact& fact, const MovedPiece& piece) {
    const ShapedPiece& drawn = piece.both.after;
    const StandingDart& dart = *fact.found;
    const DartItem& item = *drawn.piece.outline.items[dart.item].as_dart();
    const Run* run = find_run(drawn.runs, dart.edge);
    fact.pivot = fact.used_pivot = dart.figures.pivot;
    fact.bisector_off_mm =
        std::max(0.0, std::abs(dart.figures.off_bisector) - std::abs(fact.asked->dart.figures.off_bisector));
    const double share = run && run->length > 0 ? dart.distance_mm / run->length : 0;
    if (const auto sides = mouth_sides(piece.parts, drawn.runs, {dart.edge, share})) {
        const MovedSides moved = moved_sides(piece, *sides, fact.asked->pivot);
        if (sides->before != sides->after) measure_turn(fact, moved);
        measure_aim(fact, moved, robust_motion(piece.parts.places[sides->before]), item);
    }
    fact.kink_deg = std::min(dart.kink_deg, kink_deg(drawn.piece.outline, dart.item, fact.used_pivot));
    const Vector a = dart.figures.a - fact.used_pivot;
    const Vector b = dart.figures.b - fact.used_pivot;
    fact.angle_rad = angle_from(a, b);
}

}  // namespace dartwright
