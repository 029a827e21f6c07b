#include "dartwright/darts/pivot.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "dartwright/darts/pivot_choices.hpp"
#include "dartwright/darts/target_cut.hpp"

namespace dartwright {
namespace {

/// Pivots nearer to each other than this count as one, mm: a pencil point's width on the table.
constexpr double same_pivot_mm = 0.1;

std::string text_of(const char* format, double value) {
    char text[96];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

Outline closed_outline(const Piece& piece, double gap_mm, std::vector<std::string>& notes) {
    const double gap = gap_of(piece.outline);
    if (gap > gap_mm) {
        throw Impossible(
            "the outline of " + quoted(piece.name) + " does not close, by " + text_of("%.1f mm", gap),
            "close it first");
    }
    if (gap > 0) notes.push_back("a gap of " + text_of("%.4f mm", gap) + " in the outline was closed");
    return with_gap_closed(piece.outline);
}

void snap_pivots(Outline& outline, std::size_t dart, std::vector<std::string>& notes) {
    const Point pivot = outline.items[dart].as_dart()->turning_point();
    for (OutlineItem& item : outline.items) {
        DartItem* other = item.as_dart();
        if (!other || other->turning_point() == pivot) continue;
        const double apart = distance(other->turning_point(), pivot);
        if (apart > same_pivot_mm) continue;
        if (!other->pivot) other->point = pivot;
        if (other->pivot) other->pivot = pivot;
        notes.push_back("the pivot of " + quoted(other->name) + " was " + text_of("%.3f mm", apart) +
                        " away and is taken as the same");
    }
}

bool is_name_taken(const Piece& piece, const std::string& name, std::size_t except) {
    const auto found = find_dart(piece, name);
    const bool is_double = std::any_of(piece.double_darts.begin(), piece.double_darts.end(),
                                       [&](const DoubleDart& each) { return each.name == name; });
    return is_double || (found && *found != except);
}

struct NameQuestion {
    std::string wanted;
    std::string edge;
    bool is_all = true;
};
std::string name_chosen(const Piece& piece, std::size_t dart, const NameQuestion& question) {
    const std::size_t none = piece.outline.items.size();
    const std::size_t leaves = question.is_all ? dart : none;
    if (!question.wanted.empty()) {
        if (!is_name_taken(piece, question.wanted, leaves)) return question.wanted;
        throw BadWords("there is a dart " + quoted(question.wanted) + " in " + quoted(piece.name) +
                       " already; expected another name");
    }
    if (question.is_all) return piece.outline.items[dart].as_dart()->name;
    const std::string plain = question.edge + " dart";
    std::string name = plain;
    for (int number = 2; is_name_taken(piece, name, none); ++number)
        name = plain + " " + std::to_string(number);
    return name;
}

// Where the closed dart's two ends come together: the held one's place, or their mean if they differ.
Point closed_joint(const DartFigures& f, bool is_after_held, std::vector<std::string>& notes) {
    const Point held = is_after_held ? f.b : f.a;
    const double difference = f.pivot_leg_a - f.pivot_leg_b;
    // Below a thousandth of a micrometre the legs are equal but for rounding.
    constexpr double rounding_mm = 1e-6;
    if (std::abs(difference) <= rounding_mm) return held;
    notes.push_back("the legs differed by " + text_of("%.3f mm", std::abs(difference)) +
                    "; both ends were brought to their mean");
    return f.pivot + ((f.pivot_leg_a + f.pivot_leg_b) / 2) * unit(held - f.pivot);
}

struct NewDart {
    std::string name;
    std::string press;
    double back_off = 0;
};

// The dart at the end of `chain_end` opening to `to`; both at one distance from the pivot.
OutlineItem opened_dart(const DartItem& old, const NewDart& fresh, PairOfPoints mouth) {
    const Point pivot = old.turning_point();
    DartItem dart;
    dart.name = fresh.name;
    dart.press = fresh.press;
    dart.pivot = old.pivot;
    dart.back_off = old.back_off;
    if (dart.back_off && *dart.back_off > fresh.back_off) dart.back_off = fresh.back_off;
    dart.point = pivot;
    if (fresh.back_off != 0) {
        const double angle = angle_from(mouth.first - pivot, mouth.second - pivot);
        const Vector along = apply(turn_by(angle / 2), unit(mouth.first - pivot));
        dart.pivot = pivot;
        dart.point = pivot + fresh.back_off * along;
    }
    return {dart, mouth.second};
}

void restore_pivots(Chain& chain, const Chain& before, Point pivot) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
        DartItem* dart = chain[i].item.as_dart();
        if (!dart || !(before[i].item.as_dart()->turning_point() == pivot)) continue;
        if (dart->pivot) dart->pivot = pivot;
        if (!dart->pivot) dart->point = pivot;
    }
}

struct Turning {
    const DartItem* dart = nullptr;
    DartFigures figures;
    AngleChosen angle;
    bool is_after_held = false;
    Motion motion;
    NewDart fresh;
};

Motion motion_of(const Turning& t) {
    Turn turn = t.angle.is_all ? turn_between(t.figures.b - t.figures.pivot, t.figures.a - t.figures.pivot)
                               : turn_by(-t.angle.rad);
    if (t.is_after_held) turn = inverse(turn);
    return turn_about(t.figures.pivot, turn);
}

Outline turned_outline(const TargetCut& cut, const Turning& t, std::vector<std::string>& notes) {
    PartsOfCut parts = parts_of(cut);
    Chain& turning = t.is_after_held ? parts.before_dart : parts.after_dart;
    const Chain unturned = turning;
    turning = moved(turning, t.motion);
    restore_pivots(turning, unturned, t.figures.pivot);
    if (t.angle.is_all) {
        const Point joint = closed_joint(t.figures, t.is_after_held, notes);
        end_at(parts.before_dart, joint);
        start_at(parts.after_dart, joint);
    }
    const PairOfPoints new_mouth{parts.after_dart.back().item.to, parts.before_dart.front().start};
    const PairOfPoints old_mouth{parts.before_dart.back().item.to, parts.after_dart.front().start};
    Chain chain = parts.after_dart;
    // The new dart follows the item at its place in rank, so that the outline need not begin with a dart.
    chain.push_back(
        {new_mouth.first, opened_dart(*t.dart, t.fresh, new_mouth), parts.before_dart.front().rank + 0.1});
    chain.insert(chain.end(), parts.before_dart.begin(), parts.before_dart.end());
    if (t.angle.is_all) {
        chain = rejoined_at(chain, chain.size() - 1);
    } else {
        NewDart left{t.dart->name, t.dart->press, t.figures.back_off};
        OutlineItem item = opened_dart(*t.dart, left, old_mouth);
        item.as_dart()->back_off = t.dart->back_off;
        chain.push_back({old_mouth.first, item, static_cast<double>(cut.dart)});
    }
    return outline_of(std::move(chain));
}

TurningPart turning_part(const TargetCut& cut, const Turning& t) {
    TurningPart part;
    part.polygon = t.is_after_held ? polygon_before_dart(cut) : polygon_after_dart(cut);
    part.held_polygon = t.is_after_held ? polygon_after_dart(cut) : polygon_before_dart(cut);
    part.motion = t.motion;
    const Point target = start_of_item(cut.outline, cut.target);
    const DartFigures& f = t.figures;
    part.inner_borders = {{f.pivot, target}, {f.pivot, f.a}, {f.pivot, f.b}};
    part.wedge = {f.pivot, f.a, f.b};
    return part;
}

void turn_contents(Piece& piece, const TargetCut& cut, const Turning& t) {
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
        piece.grain->from = apply(t.motion, piece.grain->from);
        piece.grain->to = apply(t.motion, piece.grain->to);
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

std::vector<RunChange> run_changes(const std::vector<Run>& before, const std::vector<Run>& after) {
    std::vector<RunChange> out;
    for (const Run& run : before) {
        const Run* same = find_run(after, run.edge);
        out.push_back({run.edge, run.length, same ? same->length : 0});
    }
    return out;
}

// A corner that the closed mouth leaves in its run is said; a mouth true about the pivot leaves none.
void warn_of_corner(const Outline& outline, const DartFigures& f, double mouth_deg,
                    std::vector<std::string>& notes) {
    for (const Run& run : runs_of(outline)) {
        const auto inside = std::find_if(run.darts.begin(), run.darts.end(), [&](std::size_t dart) {
            return start_of_item(outline, dart) == f.a && outline.items[dart].to == f.b;
        });
        if (inside == run.darts.end()) continue;
        const std::size_t n = outline.items.size();
        const std::size_t before = (*inside + n - 1) % n;
        const std::size_t after = (*inside + 1) % n;
        if (!outline.items[before].as_edge() || !outline.items[after].as_edge()) return;
        const Vector in = tangent_at_end(curves_of_item(outline, before).back());
        const Vector out = tangent_at_start(curves_of_item(outline, after).front());
        const double kink = degrees(std::remainder(angle_from(in, out) - f.angle_rad, 2 * pi));
        if (std::abs(kink) <= mouth_deg) return;
        notes.push_back("closing the dart leaves a corner of " + text_of("%.1f degrees", std::abs(kink)) +
                        " in " + quoted(run.edge) + "; draw that edge smooth");
    }
}

Made made_of(const PivotRequest& request, const PivotAccount& account) {
    Made made{"pivot", {{"piece", request.piece}, {"dart", request.dart}, {"to", request.to}}};
    const auto add = [&](const char* key, const std::string& value) { made.request.push_back({key, value}); };
    if (request.part.share) add("share", text_of("%.17g%%", *request.part.share * 100));
    if (request.part.angle_rad) add("angle", text_of("%.17g", degrees(*request.part.angle_rad)));
    if (request.part.intake_mm) add("intake", text_of("%.17gmm", *request.part.intake_mm));
    if (request.back_off_mm) add("back_off", text_of("%.17gmm", *request.back_off_mm));
    if (!request.hold.empty()) add("hold", request.hold);
    if (account.new_dart != request.dart) add("name", account.new_dart);
    if (!request.press.empty()) add("press", request.press);
    return made;
}

double back_off_chosen(const PivotRequest& request, const DartFigures& f, double leg_mm) {
    const double back_off = request.back_off_mm.value_or(f.back_off);
    if (request.back_off_mm && back_off < 0) {
        throw BadWords("the back-off is " + text_of("%g mm", back_off) + "; expected 0 or more");
    }
    if (back_off > leg_mm / 2) {
        throw Impossible("the point would back off " + text_of("%.1f mm", back_off) +
                             " on a dart whose leg is " + text_of("%.1f mm", leg_mm) + " from the pivot",
                         "set a back-off of at most " + text_of("%.1f mm", leg_mm / 2));
    }
    return back_off;
}

}  // namespace

PivotResult pivot(const Pattern& pattern, const PivotRequest& request) {
    PivotResult result{pattern, {}};
    PivotAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    piece.outline = closed_outline(piece, tolerances.gap_mm, account.notes);
    snap_pivots(piece.outline, dart, account.notes);
    const std::vector<Run> runs = runs_of(piece.outline);
    const Piece before = piece;

    Turning turning;
    turning.dart = before.outline.items[dart].as_dart();
    turning.figures = movable_dart(piece, dart, tolerances.legs_mm);
    turning.angle = angle_chosen(request.part, turning.figures);
    const TargetChosen target = target_chosen(piece, runs, request.to);
    turning.fresh.name = name_chosen(piece, dart, {request.name, target.edge, turning.angle.is_all});
    const TargetCut cut = cut_at_target(piece.outline, target, request.dart);
    const std::string trouble = trouble_with(cut.polygon, cut.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    refuse_blocked_cut(piece, cut, target);
    turning.is_after_held = is_after_dart_held(piece, cut, request.hold);
    turning.motion = motion_of(turning);

    const Vector axis = start_of_item(cut.outline, cut.target) - turning.figures.pivot;
    turning.fresh.back_off = back_off_chosen(request, turning.figures, norm(axis));
    const bool is_corner = target.at_start || target.at_end;
    const PressChosen press = press_chosen(
        piece, runs,
        {request.press.empty() ? turning.dart->press : request.press, is_corner ? "" : target.edge, axis});
    turning.fresh.press = press.edge;
    if (!press.note.empty()) account.notes.push_back(press.note);
    if (turning.dart->legs) account.notes.push_back("the curved legs are drawn straight");

    const Outline turned = turned_outline(cut, turning, account.notes);
    const std::string overlap = trouble_with(wedge_polygon(turned), turned);
    if (!overlap.empty())
        throw Impossible("the parts would overlap after turning: " + overlap,
                         "move a smaller part, or to another place");
    turn_contents(piece, cut, turning);
    piece.outline = turned;
    if (turning.angle.is_all) {
        warn_of_corner(before.outline, turning.figures, tolerances.mouth_deg, account.notes);
    }

    const PartsOfCut parts = parts_of(cut);
    account.piece = request.piece;
    account.dart = request.dart;
    account.new_dart = turning.fresh.name;
    account.to = request.to;
    account.angle_rad = turning.angle.rad;
    account.angle_left_rad = turning.angle.is_all ? 0 : turning.figures.angle_rad - turning.angle.rad;
    account.turned = edges_of(turning.is_after_held ? parts.before_dart : parts.after_dart);
    account.held = edges_of(turning.is_after_held ? parts.after_dart : parts.before_dart);
    account.turn_rad = angle(turning.motion);
    account.runs = run_changes(runs, runs_of(piece.outline));
    account.old_intake_mm = turning.figures.intake;
    account.new_intake_mm = figures_of(piece.outline, *find_dart(piece, account.new_dart)).intake;
    result.pattern.made.push_back(made_of(request, account));
    return result;
}

}  // namespace dartwright
