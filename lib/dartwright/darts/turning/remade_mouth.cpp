#include "dartwright/darts/turning/remade_mouth.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/redrawing/around_dart.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/darts/turning/opened_dart.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {
namespace {

// The mouth as seen from the new pivot: both ends on one circle about it, at these angles from the axis.
struct SeenMouth {
    Vector axis;  // unit, towards the middle of the old mouth
    double leg = 0;
    double before_rad = 0;
    double after_rad = 0;
};

// With the old middle and the old intake, the chord square to the axis.
SeenMouth square_mouth(const DartFigures& f, Point pivot) {
    const Vector to_middle = middle(f.a, f.b) - pivot;
    const double height = norm(to_middle);
    const double half_angle = angle_of_direction(f.intake / 2, height);
    return {unit(to_middle), hypotenuse(height, f.intake / 2), half_angle, half_angle};
}

PairOfPoints ends_of(const SeenMouth& mouth, Point pivot) {
    return {pivot + mouth.leg * apply(turn_by(-mouth.before_rad), mouth.axis),
            pivot + mouth.leg * apply(turn_by(mouth.after_rad), mouth.axis)};
}

// Lengths of the run's parts beside the mouth. An edge that goes all round is one part; half is counted to
// each.
struct BesideMouth {
    double before = 0;
    double after = 0;
};
BesideMouth beside(const Chain& chain) {
    const Chain before = run_at_end(chain);
    const double length = length_of(before);
    if (before.size() == chain.size()) return {length / 2, length / 2};
    return {length, length_of(run_at_start(chain))};
}

struct DrawnMouth {
    AroundDart around;  ///< the dart anew, and the chain beside it
    Point start;        ///< of the dart: the mouth's first end
    Point end;
    std::array<double, 2> span_mm{};
};
DrawnMouth drawn_mouth(const AroundDart& old, const NewAim& aim, const SeenMouth& mouth) {
    const PairOfPoints ends = ends_of(mouth, aim.pivot);
    DartItem aimed = old.dart;
    if (aimed.pivot) aimed.pivot = aim.pivot;
    if (!aimed.pivot) aimed.point = aim.pivot;
    OutlineItem item = opened_dart(aimed, {aimed.name, aimed.press, aim.back_off_mm}, ends);
    item.as_dart()->back_off = old.dart.back_off;
    const Point point = item.as_dart()->point;
    DrawnMouth out{{old.chain, *item.as_dart(), old.rank}, ends.first, ends.second, {}};
    if (is_in_one_run(old) && aim.span_mm > 0) {
        const Motion closing = turn_about(point, turn_between(ends.second - point, ends.first - point));
        const RedrawnChain redrawn =
            redrawn_over(old.chain, {ends.first, ends.second, closing}, aim.span_mm, Drawn::through);
        out.around.chain = redrawn.chain;
        out.span_mm = {redrawn.before_mm, redrawn.after_mm};
        return out;
    }
    end_at(out.around.chain, ends.first);
    start_at(out.around.chain, ends.second);
    return out;
}

// What moving an end by a length makes of its edge: outwards from the pivot, and anticlockwise about it.
struct Slopes {
    double outwards = 0;
    double around = 0;
};
Slopes slopes_at(Point end, Vector lengthens, Point pivot) {
    const Vector leg = unit(end - pivot);
    return {dot(lengthens, leg), dot(lengthens, perpendicular(leg))};
}

// The least movement of both ends, on one circle, that gives the edges their lengths again: two conditions on
// the radius and the two angles. An edge that runs across its leg is mended by the angle, one that runs along
// it by the radius.
SeenMouth corrected(SeenMouth mouth, const BesideMouth& too_long, const DrawnMouth& drawn, Point pivot) {
    const Slopes before = slopes_at(drawn.start, direction_before(drawn.around), pivot);
    const Slopes after = slopes_at(drawn.end, -direction_after(drawn.around), pivot);
    // Both rows are of length 1; what they have in common is the radius.
    const double common = before.outwards * after.outwards;
    const double determinant = 1 - common * common;
    const double k_before = (-too_long.before + common * too_long.after) / determinant;
    const double k_after = (-too_long.after + common * too_long.before) / determinant;
    const double before_turn = k_before * before.around / mouth.leg;
    const double after_turn = k_after * after.around / mouth.leg;
    mouth.leg += k_before * before.outwards + k_after * after.outwards;
    mouth.before_rad -= before_turn;
    mouth.after_rad += after_turn;
    return mouth;
}

// Each step leaves a part of the error that grows with the turn; well under this many reach rounding.
constexpr int most_steps = 60;
// Of the length: what arc lengths themselves are good for, with some room below their bound of 1e-9.
constexpr double length_kept = 1e-10;

DrawnMouth drawn_at_length(const AroundDart& old, const NewAim& aim, SeenMouth mouth) {
    const BesideMouth wanted = beside(old.chain);
    for (int step = 0; step < most_steps; ++step) {
        // A mouth that shuts or passes the half circle is none.
        const bool is_open = mouth.before_rad + mouth.after_rad > 0 && mouth.leg > 0 &&
                             std::abs(mouth.before_rad) < pi / 2 && std::abs(mouth.after_rad) < pi / 2;
        if (!is_open) break;
        DrawnMouth drawn = drawn_mouth(old, aim, mouth);
        const BesideMouth now = beside(drawn.around.chain);
        const BesideMouth too_long{now.before - wanted.before, now.after - wanted.after};
        if (std::abs(too_long.before) <= length_kept * wanted.before &&
            std::abs(too_long.after) <= length_kept * wanted.after) {
            return drawn;
        }
        mouth = corrected(mouth, too_long, drawn, aim.pivot);
    }
    throw Impossible("the edge beside " + quoted(old.dart.name) + " cannot keep its length there", "");
}

}  // namespace

RemadeMouth remade_mouth(const Outline& outline, std::size_t dart, const NewAim& aim) {
    const AroundDart old = around_dart(outline, dart);
    const DartFigures f = figures_of(outline, dart);
    const SeenMouth mouth = square_mouth(f, aim.pivot);
    const double turned = angle_from(bisector_of(f), mouth.axis);
    if (!(std::abs(degrees(turned)) <= most_turn_deg)) {
        throw Impossible("the mouth of " + quoted(old.dart.name) + " would have to turn by " +
                             text_of("%.1f degrees", std::abs(degrees(turned))),
                         "");
    }
    DrawnMouth drawn = drawn_at_length(old, aim, mouth);
    Chain chain = std::move(drawn.around.chain);
    chain.push_back({drawn.start, {drawn.around.dart, drawn.end}, old.rank});
    return {outline_of(std::move(chain)), turned, drawn.span_mm};
}

}  // namespace dartwright
