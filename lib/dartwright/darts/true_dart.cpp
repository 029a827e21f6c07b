#include "dartwright/darts/true_dart.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/around_dart.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

double leg_wanted(const DartFigures& f, TrueLegs legs) {
    if (legs == TrueLegs::long_) return std::max(f.pivot_leg_a, f.pivot_leg_b);
    if (legs == TrueLegs::short_) return std::min(f.pivot_leg_a, f.pivot_leg_b);
    return (f.pivot_leg_a + f.pivot_leg_b) / 2;
}

// The dart with legs of one length along their old directions and its point on the bisector.
struct TruedDart {
    DartItem dart;
    Point a;
    Point b;
    Motion closing;  ///< as sewn: takes b to a about the point
};
TruedDart trued_legs(const DartItem& old, const DartFigures& f, double leg) {
    TruedDart out{old, f.pivot + leg * unit(f.a - f.pivot), f.pivot + leg * unit(f.b - f.pivot), {}};
    out.dart.legs.reset();
    // Short of the pivot by as much as it was, or as much as is asked of it; never beyond.
    const double back_off = std::max({0.0, f.back_off, old.back_off.value_or(0)});
    out.dart.point = back_off > 0 ? f.pivot + back_off * bisector_of(f) : f.pivot;
    if (back_off > 0) out.dart.pivot = f.pivot;
    out.closing = turn_about(out.dart.point, turn_between(out.b - out.dart.point, out.a - out.dart.point));
    return out;
}

// Where the line crosses the folded legs: its distance from the point along them.
double crossing_along(const Cubic& line, Point point, Vector legs) {
    const auto side = [&](double t) { return cross(legs, point_at(line, t) - point); };
    double low = 0;
    double high = 1;
    if (!(side(low) * side(high) < 0)) {
        throw Impossible("the line over the folded dart does not cross its legs", "take a shorter span");
    }
    const bool is_rising = side(low) < 0;
    // Halving 60 times leaves less of the parameter than a double can tell apart.
    for (int k = 0; k < 60; ++k) {
        const double middle = (low + high) / 2;
        ((side(middle) < 0) == is_rising ? low : high) = middle;
    }
    return dot(legs, point_at(line, low) - point);
}

// The legs' length to the pivot with which both end on the line drawn across the folded dart. The dart's fold
// depends on that length only through the back-off, so that each step leaves a small part of the error.
TruedDart drawn_legs(const AroundDart& around, const DartFigures& f, double span_mm) {
    constexpr double legs_settled_share = 1e-12;
    constexpr int most_steps = 100;
    double leg = leg_wanted(f, TrueLegs::mean);
    for (int step = 0; step < most_steps; ++step) {
        const TruedDart trued = trued_legs(around.dart, f, leg);
        const Cubic line = line_across(around.chain, trued.closing, span_mm);
        const Vector to_end = trued.a - trued.dart.point;
        const double change = crossing_along(line, trued.dart.point, unit(to_end)) - norm(to_end);
        if (std::abs(change) <= legs_settled_share * leg) break;
        leg += change;
    }
    return trued_legs(around.dart, f, leg);
}

Chain with_ends_moved(const AroundDart& around, const TruedDart& trued) {
    Chain chain = around.chain;
    end_at(chain, trued.a);
    start_at(chain, trued.b);
    return chain;
}

Outline closed_up(Chain chain, const AroundDart& around, const TruedDart& trued) {
    chain.push_back({trued.a, {trued.dart, trued.b}, around.rank});
    return outline_of(std::move(chain));
}

const char* word_of(TrueLegs legs) {
    if (legs == TrueLegs::drawn) return "drawn";
    return legs == TrueLegs::long_ ? "long" : legs == TrueLegs::short_ ? "short" : "mean";
}

// Legs of one length and a smooth mouth, but for rounding of a metre: trued again, nothing would change.
bool is_true_already(const DartItem& dart, const DartFigures& f, double kink_deg) {
    constexpr double rounding_deg = 1e-7;
    const bool is_short_of_pivot = f.back_off >= dart.back_off.value_or(0) - step_rounding_mm;
    return !dart.legs && is_short_of_pivot && std::abs(f.pivot_leg_a - f.pivot_leg_b) <= step_rounding_mm &&
           std::abs(f.off_bisector) <= step_rounding_mm && kink_deg <= rounding_deg;
}

void refuse_bad_request(const TrueDartRequest& request, const DartFigures& f) {
    require_span(request.span_mm, SpanMayBe::none_or_wide);
    if (f.angle_rad > 0 && f.sewn_angle_rad > 0) return;
    throw Impossible("the mouth of " + quoted(request.dart) + " is shut or its legs are crossed",
                     "draw the dart again");
}

// A tuck is stitched over less than its legs.
void end_tuck_stitched_too_far(Piece& piece, const std::string& name, std::vector<std::string>& notes) {
    const std::size_t item = *find_dart(piece, name);
    DartItem& dart = *piece.outline.items[item].as_dart();
    const DartFigures f = figures_of(piece.outline, item);
    if (!dart.stitched || *dart.stitched < std::min(f.leg_a, f.leg_b)) return;
    dart.stitched.reset();
    notes.push_back("the legs of " + quoted(name) +
                    " are shorter now than it was stitched; it is sewn to its point");
}

void true_outline(Piece& piece, std::size_t dart, const TrueDartRequest& request, TrueDartAccount& account) {
    const AroundDart around = around_dart(piece.outline, dart);
    const DartFigures f = figures_of(piece.outline, dart);
    refuse_bad_request(request, f);
    account.mouth_before_deg = account.mouth_after_deg =
        is_in_one_run(around) ? mouth_corner_deg(around, f) : 0;
    if (is_true_already(around.dart, f, account.mouth_before_deg)) {
        account.notes.push_back("the dart is true; nothing was changed");
        return;
    }
    const bool is_smoothed = is_in_one_run(around) && request.span_mm > 0;
    const bool is_drawn = is_smoothed && request.legs == TrueLegs::drawn;
    const TruedDart trued = is_drawn ? drawn_legs(around, f, request.span_mm)
                                     : trued_legs(around.dart, f, leg_wanted(f, request.legs));
    if (is_smoothed) {
        const RedrawnChain redrawn = redrawn_over(around.chain, {trued.a, trued.b, trued.closing},
                                                  request.span_mm, is_drawn ? Drawn::across : Drawn::through);
        piece.outline = closed_up(redrawn.chain, around, trued);
        account.span_mm = {redrawn.before_mm, redrawn.after_mm};
    } else {
        piece.outline = closed_up(with_ends_moved(around, trued), around, trued);
    }
    if (around.dart.legs) account.notes.push_back("the curved legs are drawn straight");
    if (!is_in_one_run(around)) {
        account.notes.push_back("the dart stands in a corner, so only its legs were trued");
    }
    refuse_bad_redrawing(piece.outline);
    end_tuck_stitched_too_far(piece, around.dart.name, account.notes);
}

}  // namespace

TrueDartResult true_dart(const Pattern& pattern, const TrueDartRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return true_dart(without_spare_items(pattern), request);
    TrueDartResult result{pattern, {}};
    TrueDartAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    piece = prepared_piece(piece, dart, tolerances_of(pattern), {account.notes, pattern.unit});
    const DartFigures before = figures_of(piece.outline, dart);
    const std::vector<Run> runs = runs_of(piece.outline);
    true_outline(piece, dart, request, account);
    const std::size_t trued = *find_dart(piece, request.dart);
    const DartFigures after = figures_of(piece.outline, trued);
    const AroundDart around = around_dart(piece.outline, trued);
    account.piece = request.piece;
    account.dart = request.dart;
    account.legs_before_mm = {before.pivot_leg_a, before.pivot_leg_b};
    account.legs_after_mm = {after.pivot_leg_a, after.pivot_leg_b};
    account.intake_before_mm = before.intake;
    account.intake_after_mm = after.intake;
    if (is_in_one_run(around)) account.mouth_after_deg = mouth_corner_deg(around, after);
    account.runs = run_changes(runs, runs_of(piece.outline));
    note_seams_of_changed_runs(pattern, request.piece, account.runs, {account.notes, pattern.unit});
    result.pattern.made.push_back({"true",
                                   {{"piece", request.piece},
                                    {"dart", request.dart},
                                    {"legs", word_of(request.legs)},
                                    {"span", words_of_length(request.span_mm)}}});
    return result;
}

}  // namespace dartwright
