#include "dartwright/darts/repoint.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/around_dart.hpp"
#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/darts/turning/opened_dart.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/darts/turning/remade_mouth.hpp"
#include "dartwright/darts/turning/repoint_choices.hpp"
#include "dartwright/darts/turning/turned_contents.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

// The piece with the wedges of these darts filled, the others open to their pivots.
std::vector<Point> cloth_without(const Outline& outline, const std::vector<DartMove>& moves) {
    Outline filled = outline;
    for (OutlineItem& item : filled.items) {
        const DartItem* dart = item.as_dart();
        const bool is_moved = dart && std::any_of(moves.begin(), moves.end(), [&](const DartMove& move) {
                                  return move.dart == dart->name;
                              });
        if (is_moved) item.what = EdgeItem{};
    }
    return flat_outline(filled, DartsDrawn::to_pivots, decision_chord_error_mm).points;
}

void refuse_outside(const Outline& outline, const PlannedMoves& moves) {
    if (moves.pivot == moves.old_pivot ||
        where_in_polygon(cloth_without(outline, moves.darts), moves.pivot) == Where::inside)
        return;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (!outline.items[i].as_dart()) continue;
        const DartFigures f = figures_of(outline, i);
        const std::vector<Point> wedge{f.a, f.b, f.pivot};
        if (f.pivot == moves.old_pivot || where_in_polygon(wedge, moves.pivot) == Where::outside) continue;
        throw Impossible("the place lies in the wedge of " + quoted(outline.items[i].as_dart()->name), "");
    }
    throw Impossible("the place lies outside the piece", "");
}

// The same mouth, its ends at one distance from the pivot, and the dart aimed along its centre line.
Outline aimed_along(const Outline& outline, std::size_t dart, const DartMove& move, Notes notes) {
    const DartFigures f = figures_of(outline, dart);
    const double apart = std::abs(f.pivot_leg_a - f.pivot_leg_b);
    PairOfPoints mouth{f.a, f.b};
    Outline out = outline;
    if (apart > step_rounding_mm) {
        const double leg = (f.pivot_leg_a + f.pivot_leg_b) / 2;
        mouth = {f.pivot + leg * unit(f.a - f.pivot), f.pivot + leg * unit(f.b - f.pivot)};
        AroundDart around = around_dart(outline, dart);
        end_at(around.chain, mouth.first);
        start_at(around.chain, mouth.second);
        around.chain.push_back({mouth.first, {around.dart, mouth.second}, around.rank});
        out = outline_of(std::move(around.chain));
    }
    // What a file's decimals leave, under what the sentence could show, is not worth one.
    if (apart >= least_told_mm) {
        notes.push_back("the legs of " + quoted(move.dart) + " differed by " + difference_told(apart, 3) +
                        "; both ends were brought to their mean");
    }
    DartItem aimed = *outline.items[dart].as_dart();
    const std::optional<double> asked = aimed.back_off;
    if (aimed.pivot) aimed.pivot = move.pivot;
    if (!aimed.pivot) aimed.point = move.pivot;
    const NewDart fresh{aimed.name, aimed.press, move.back_off_mm};
    OutlineItem& item = out.items[dart];
    item = opened_dart(aimed, fresh, mouth);
    item.as_dart()->back_off = asked && move.is_asked ? move.back_off_mm : asked;
    return out;
}

bool is_on_centre_line(const DartFigures& f, Point pivot) {
    return std::abs(cross(bisector_of(f), pivot - f.pivot)) <= step_rounding_mm;
}

std::optional<double> corner_over_mouth(const Outline& outline, std::size_t dart) {
    const std::size_t n = outline.items.size();
    const bool has_edges =
        outline.items[(dart + n - 1) % n].as_edge() && outline.items[(dart + 1) % n].as_edge();
    if (!has_edges) return std::nullopt;
    const AroundDart around = around_dart(outline, dart);
    if (!is_in_one_run(around)) return std::nullopt;
    return mouth_corner_deg(around, figures_of(outline, dart));
}

void move_dart(Outline& outline, const DartMove& move, const PlannedMoves& moves, RepointAccount& account) {
    const auto item = [&] {
        return static_cast<std::size_t>(std::find_if(outline.items.begin(), outline.items.end(),
                                                     [&](const OutlineItem& each) {
                                                         return each.as_dart() &&
                                                                each.as_dart()->name == move.dart;
                                                     }) -
                                        outline.items.begin());
    };
    const bool is_tuck = outline.items[item()].as_dart()->stitched.has_value();
    RepointedDart done;
    done.dart = move.dart;
    done.before = figures_of(outline, item());
    done.mouth_before_deg = corner_over_mouth(outline, item());
    if (outline.items[item()].as_dart()->legs) {
        account.notes.push_back("the curved legs of " + quoted(move.dart) + " are drawn straight");
    }
    if (is_on_centre_line(done.before, move.pivot)) {
        outline = aimed_along(outline, item(), move, {account.notes, moves.unit});
    } else {
        const RemadeMouth remade =
            remade_mouth(outline, item(), {move.pivot, move.back_off_mm, moves.span_mm});
        outline = remade.outline;
        done.turned_rad = remade.turned_rad;
        done.span_mm = remade.span_mm;
    }
    done.after = figures_of(outline, item());
    if (move.back_off_mm > done.after.pivot_leg_a / 2) {
        throw Impossible(quoted(move.dart) + " stops " + measure_told(move.back_off_mm) +
                             " short of its pivot, which would be only " +
                             measure_told(done.after.pivot_leg_a) + " from its mouth",
                         "");
    }
    done.mouth_after_deg = corner_over_mouth(outline, item());
    if (is_tuck && !outline.items[item()].as_dart()->stitched) {
        account.notes.push_back("the legs of " + quoted(move.dart) +
                                " are shorter now than it was stitched; it is sewn to its point");
    }
    account.darts.push_back(done);
}

void refuse_double_darts(const Piece& piece, const RepointAccount& account) {
    for (const RepointedDart& dart : account.darts) {
        TurningPart legs;
        legs.inner_borders = {{dart.after.pivot, dart.after.a}, {dart.after.pivot, dart.after.b}};
        const std::string crossed = crossed_double_dart(piece, legs);
        if (crossed.empty()) continue;
        throw Impossible(quoted(dart.dart) + " would cross the dart " + quoted(crossed), "");
    }
}

// Drill marks at the old pivot, and at the old points where those moved by themselves.
void move_drills(Piece& piece, const PlannedMoves& moves, RepointAccount& account) {
    const auto place_for = [&](Point at) {
        if (distance(at, moves.old_pivot) <= one_point_mm) return account.darts.front().after.pivot;
        for (const RepointedDart& dart : account.darts) {
            if (distance(at, dart.before.point) <= one_point_mm) return dart.after.point;
        }
        return at;
    };
    for (Mark& mark : piece.marks) {
        auto* drill = std::get_if<DrillMark>(&mark.what);
        if (!drill) continue;
        const Point place = place_for(drill->at);
        if (distance(place, drill->at) <= one_point_mm) continue;
        drill->at = place;
        account.marks.push_back(mark.name);
    }
}

// Impossible has no remedy where a nearer place may do.
Piece moved_piece(const Piece& piece, const PlannedMoves& moves, RepointAccount& account) {
    Piece out = piece;
    refuse_outside(piece.outline, moves);
    for (const DartMove& move : moves.darts) move_dart(out.outline, move, moves, account);
    refuse_double_darts(piece, account);
    const Sentence trouble = trouble_with(wedge_polygon(out.outline), out.outline);
    if (!trouble.empty()) throw Impossible("the darts cannot aim there: " + trouble, "");
    move_drills(out, moves, account);
    return out;
}

PlannedMoves aimed_at(PlannedMoves moves, Point pivot) {
    moves.pivot = pivot;
    for (DartMove& move : moves.darts) move.pivot = pivot;
    return moves;
}

// The farthest of the places on the way from the old pivot at which the darts can aim; whole tenths of a
// millimetre, so that it is what it is said to be.
Sentence nearest_place(const Piece& piece, const PlannedMoves& moves) {
    constexpr int ways = 40;
    for (int k = ways - 1; k > 0; --k) {
        const Point way = between(moves.old_pivot, moves.pivot, double(k) / ways);
        const Point place{std::round(way.x * 10) / 10, std::round(way.y * 10) / 10};
        try {
            RepointAccount ignored;
            moved_piece(piece, aimed_at(moves, place), ignored);
            return "the nearest place on the way there that will do is " + words_of_place(place);
        } catch (const Impossible&) {
            continue;
        }
    }
    return "no place on the way there will do";
}

Piece moved_or_refused(const Piece& piece, const PlannedMoves& moves, RepointAccount& account) {
    try {
        return moved_piece(piece, moves, account);
    } catch (const Impossible& refused) {
        if (!refused.remedy.empty()) throw;
        throw Impossible(refused.reason_told, nearest_place(piece, moves));
    }
}

void note_mouths(const Tolerances& tolerances, RepointAccount& account) {
    for (const RepointedDart& dart : account.darts) {
        if (dart.mouth_after_deg.value_or(0) > tolerances.mouth_deg) {
            account.notes.push_back("with " + quoted(dart.dart) + " sewn, the edge has a corner of " +
                                    text_of("%.1f degrees", *dart.mouth_after_deg) +
                                    " over the mouth; true the dart");
        } else if (dart.mouth_before_deg.value_or(0) > tolerances.mouth_deg && dart.span_mm[0] > 0) {
            account.notes.push_back("the mouth of " + quoted(dart.dart) + " had a corner of " +
                                    text_of("%.1f degrees", *dart.mouth_before_deg) +
                                    "; a dart that is trued first gets a fairer line");
        }
    }
}

// The run that ends in the corner in which a dart stands, or null.
const Run* run_before_corner_dart(const std::vector<Run>& runs, const Outline& outline,
                                  const std::string& dart) {
    for (const Run& run : runs) {
        for (const std::size_t item : run.corner_darts_after) {
            if (outline.items[item].as_dart()->name == dart) return &run;
        }
    }
    return nullptr;
}

void note_corners(const Outline& before, const Outline& after, RepointAccount& account) {
    const std::vector<Run> runs_before = runs_of(before);
    const std::vector<Run> runs_after = runs_of(after);
    // Less than the sentence could show.
    constexpr double worth_saying_deg = 0.05;
    for (const RepointedDart& dart : account.darts) {
        const Run* run = run_before_corner_dart(runs_before, before, dart.dart);
        const Run* now = run_before_corner_dart(runs_after, after, dart.dart);
        if (!run || !now) continue;
        const double was_deg = degrees(corner_angle(before, *run, RunEnd::end));
        const double is_deg = degrees(corner_angle(after, *now, RunEnd::end));
        if (std::abs(was_deg - is_deg) < worth_saying_deg) continue;
        account.notes.push_back("with " + quoted(dart.dart) + " sewn, the corner of " + quoted(run->edge) +
                                " and " + quoted(run->after) + " is " + text_of("%.1f degrees", is_deg) +
                                "; it was " + text_of("%.1f", was_deg));
    }
}

// A level drawn through the bust point does not move with it.
void note_lines(const Piece& piece, const PlannedMoves& moves, RepointAccount& account) {
    if (moves.pivot == moves.old_pivot) return;
    for (const Mark& mark : piece.marks) {
        const auto* line = std::get_if<LineMark>(&mark.what);
        if (!line) continue;
        for (std::size_t i = 0; i + 1 < line->points.size(); ++i) {
            const Curve part = Line{line->points[i], line->points[i + 1]};
            if (closest_point(part, moves.old_pivot).distance > one_point_mm) continue;
            account.notes.push_back("the line " + quoted(mark.name) +
                                    " runs through the old place and stays");
            break;
        }
    }
}

Made made_of(const RepointRequest& request, const std::string& dart) {
    Made made{"repoint", {{"piece", request.piece}}};
    const auto add = [&](const char* key, const std::string& value) { made.request.push_back({key, value}); };
    if (request.from) {
        add("from", words_of_point(*request.from));
    } else {
        add("dart", dart);
    }
    if (request.back_off_mm) add("back_off", words_of_length(*request.back_off_mm));
    if (request.point) add("point", words_of_point(*request.point));
    if (request.pivot) add("pivot", words_of_point(*request.pivot));
    if (!request.back_off_mm) add("span", words_of_length(request.span_mm));
    return made;
}

}  // namespace

RepointResult repoint(const Pattern& pattern, const RepointRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return repoint(without_spare_items(pattern), request);
    refuse_bad_request(request);
    RepointResult result{pattern, {}};
    RepointAccount& account = result.account;
    account.piece = request.piece;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const Tolerances tolerances = tolerances_of(pattern);
    const std::size_t dart = dart_meant(piece, request);
    const std::string name = piece.outline.items[dart].as_dart()->name;
    const Piece before = prepared_piece(piece, dart, tolerances, {account.notes, pattern.unit});
    const Sentence trouble = trouble_with(wedge_polygon(before.outline), before.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    PlannedMoves moves =
        planned_moves(before, dart, request, tolerances.legs_mm, {account.notes, pattern.unit});
    moves.unit = pattern.unit;
    piece = moved_or_refused(before, moves, account);
    note_mouths(tolerances, account);
    note_corners(before.outline, piece.outline, account);
    note_lines(before, moves, account);
    account.runs = run_changes(runs_of(before.outline), runs_of(piece.outline));
    note_seams_of_changed_runs(pattern, request.piece, account.runs, {account.notes, pattern.unit});
    result.pattern.made.push_back(made_of(request, name));
    return result;
}

}  // namespace dartwright
