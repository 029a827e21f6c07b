#include "dartwright/darts/turning/dart_turn.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

// Where the closed dart's two ends come together: the held one's place, or their mean if they differ.
Point closed_joint(const DartFigures& f, bool is_after_held, Notes notes) {
    const Point held = is_after_held ? f.b : f.a;
    const double difference = f.pivot_leg_a - f.pivot_leg_b;
    // Below a thousandth of a micrometre the legs are equal but for rounding.
    if (std::abs(difference) <= sum_rounding_mm) return held;
    // What a file's decimals leave, under what the sentence could show, is not worth one.
    if (std::abs(difference) >= least_told_mm) {
        notes.push_back("the legs differed by " + difference_told(std::abs(difference), 3) +
                        "; both ends were brought to their mean");
    }
    return f.pivot + ((f.pivot_leg_a + f.pivot_leg_b) / 2) * unit(held - f.pivot);
}

void restore_pivots(Chain& chain, const Chain& before, Point pivot) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
        DartItem* dart = chain[i].item.as_dart();
        if (!dart || !(before[i].item.as_dart()->turning_point() == pivot)) continue;
        if (dart->pivot) dart->pivot = pivot;
        if (!dart->pivot) dart->point = pivot;
    }
}

// The two parts with the one turned, and what that leaves of the closing dart's mouth: one point if all of it
// is closed.
struct TurnedParts {
    PartsOfCut parts;
    PairOfPoints mouth;
};

PairOfPoints mouth_left(const DartTurn& t, Notes notes) {
    if (t.angle.is_all) {
        const Point joint = closed_joint(t.figures, t.is_after_held, notes);
        return {joint, joint};
    }
    const Motion motion = motion_of(t);
    if (t.is_after_held) return {apply(motion, t.figures.a), t.figures.b};
    return {t.figures.a, apply(motion, t.figures.b)};
}

TurnedParts turned_parts(const TargetCut& cut, const DartTurn& t, Notes notes) {
    TurnedParts out{parts_of(cut), mouth_left(t, notes)};
    Chain& turning = t.is_after_held ? out.parts.before_dart : out.parts.after_dart;
    const Chain unturned = turning;
    turning = moved(turning, motion_of(t));
    restore_pivots(turning, unturned, t.figures.pivot);
    if (cut.outline.items[cut.target].as_dart()) out.parts.before_dart.erase(out.parts.before_dart.begin());
    if (!t.angle.is_all) return out;
    if (!out.parts.before_dart.empty()) end_at(out.parts.before_dart, out.mouth.first);
    if (!out.parts.after_dart.empty()) start_at(out.parts.after_dart, out.mouth.second);
    return out;
}

// The dart at the cut: it opens from the end of the part after the closing dart to the start of the other.
ChainItem dart_at_cut(const TurnedParts& turned, const TargetCut& cut, const DartTurn& t) {
    const Chain& after = turned.parts.after_dart;
    const Chain& before = turned.parts.before_dart;
    const PairOfPoints mouth{after.empty() ? turned.mouth.second : after.back().item.to,
                             before.empty() ? turned.mouth.first : before.front().start};
    const double rank = static_cast<double>(cut.target);
    const DartItem* widened = cut.outline.items[cut.target].as_dart();
    if (widened) return {mouth.first, opened_dart(*widened, t.opened, mouth), rank};
    // A new dart follows the item at its place in rank, so that the outline need not begin with a dart.
    return {mouth.first, opened_dart(t.dart, t.opened, mouth), rank + 0.1};
}

ChainItem dart_left(const TurnedParts& turned, const TargetCut& cut, const DartTurn& t) {
    OutlineItem item = opened_dart(t.dart, {t.dart.name, t.dart.press, t.figures.back_off}, turned.mouth);
    item.as_dart()->back_off = t.dart.back_off;
    return {turned.mouth.first, item, static_cast<double>(cut.dart)};
}

Outline turned_outline(const TargetCut& cut, const DartTurn& t, Notes notes) {
    const TurnedParts turned = turned_parts(cut, t, notes);
    Chain chain = turned.parts.after_dart;
    chain.push_back(dart_at_cut(turned, cut, t));
    chain.insert(chain.end(), turned.parts.before_dart.begin(), turned.parts.before_dart.end());
    if (t.angle.is_all) return outline_of(rejoined_at(chain, chain.size() - 1));
    chain.push_back(dart_left(turned, cut, t));
    return outline_of(std::move(chain));
}

TurningPart turning_part(const TargetCut& cut, const DartTurn& t) {
    TurningPart part;
    part.polygon = t.is_after_held ? polygon_before_dart(cut) : polygon_after_dart(cut);
    part.held_polygon = t.is_after_held ? polygon_after_dart(cut) : polygon_before_dart(cut);
    part.motion = motion_of(t);
    const Point target = start_of_item(cut.outline, cut.target);
    const DartFigures& f = t.figures;
    part.inner_borders = {{f.pivot, target}, {f.pivot, f.a}, {f.pivot, f.b}};
    part.wedges = {{f.pivot, f.a, f.b}};
    return part;
}

void turn_contents(Piece& piece, const TargetCut& cut, const DartTurn& t) {
    const TurningPart part = turning_part(cut, t);
    const PartsOfCut parts = parts_of(cut);
    const std::string crossed = crossed_double_dart(piece, part);
    if (!crossed.empty()) {
        throw Impossible("the cut would cross the dart " + quoted(crossed),
                         "choose a place whose cut passes it by");
    }
    piece.marks = turned_marks(piece.marks, part);
    piece.double_darts = turned_double_darts(piece.double_darts, part);
    if (!piece.grain) return;
    const Chain& turning = t.is_after_held ? parts.before_dart : parts.after_dart;
    const Chain& held = t.is_after_held ? parts.after_dart : parts.before_dart;
    if (is_grain_turning(piece, turning, held, part)) {
        piece.grain->from = apply(part.motion, piece.grain->from);
        piece.grain->to = apply(part.motion, piece.grain->to);
    }
}

std::vector<std::string> edges_of(const Chain& chain) {
    std::vector<std::string> out;
    for (const ChainItem& each : chain) {
        const EdgeItem* edge = each.item.as_edge();
        if (edge && (out.empty() || out.back() != edge->edge)) out.push_back(edge->edge);
    }
    return out;
}

}  // namespace

Motion motion_of(const DartTurn& t) {
    Turn turn = t.angle.is_all ? turn_between(t.figures.b - t.figures.pivot, t.figures.a - t.figures.pivot)
                               : turn_by(-t.angle.rad);
    if (t.is_after_held) turn = inverse(turn);
    return turn_about(t.figures.pivot, turn);
}

Piece turned_piece(const Piece& piece, const TargetCut& cut, const DartTurn& turn, Notes notes) {
    Piece out = piece;
    out.outline = turned_outline(cut, turn, notes);
    turn_contents(out, cut, turn);
    return out;
}

void refuse_overlap(const Outline& turned) {
    const Sentence overlap = trouble_with(wedge_polygon(turned), turned);
    if (overlap.empty()) return;
    throw Impossible("the parts would overlap after turning: " + overlap,
                     "move a smaller part, or to another place");
}

void warn_of_corner(const Outline& outline, const DartFigures& closed, const CornerWarning& warning,
                    Notes notes) {
    for (const Run& run : runs_of(outline)) {
        const auto inside = std::find_if(run.darts.begin(), run.darts.end(), [&](std::size_t dart) {
            return start_of_item(outline, dart) == closed.a && outline.items[dart].to == closed.b;
        });
        if (inside == run.darts.end()) continue;
        const std::size_t n = outline.items.size();
        const std::size_t before = (*inside + n - 1) % n;
        const std::size_t after = (*inside + 1) % n;
        if (!outline.items[before].as_edge() || !outline.items[after].as_edge()) return;
        const Vector in = tangent_at_end(curves_of_item(outline, before).back());
        const Vector out = tangent_at_start(curves_of_item(outline, after).front());
        const double kink = degrees(std::remainder(angle_from(in, out) - closed.angle_rad, 2 * pi));
        if (std::abs(kink) <= warning.mouth_deg) return;
        notes.push_back("closing the dart leaves a corner of " + text_of("%.1f degrees", std::abs(kink)) +
                        " in " + quoted(run.edge) + "; " + warning.remedy);
    }
}

RunsOfParts runs_of_parts(const TargetCut& cut, const DartTurn& turn) {
    const PartsOfCut parts = parts_of(cut);
    if (turn.is_after_held) return {edges_of(parts.before_dart), edges_of(parts.after_dart)};
    return {edges_of(parts.after_dart), edges_of(parts.before_dart)};
}

}  // namespace dartwright
