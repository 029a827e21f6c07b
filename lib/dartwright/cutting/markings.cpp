#include "dartwright/cutting/markings.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/notches_on_cutting_line.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {

namespace {

/// A nick to be made: from where, which way is out, and what lies between the line and the stitching.
struct NickPlace {
    Point outer;
    Vector outwards;
    double allowance_mm = 0;
};

int count_of(NotchKind kind) {
    return kind == NotchKind::single ? 1 : kind == NotchKind::double_ ? 2 : 3;
}

/// Where the cutting line is met, going out from a point inside it.
Point met_from(NotchesOnCuttingLine& line, Point inside, Vector outwards) {
    RunPlace place;
    place.point = inside;
    place.tangent = perpendicular(outwards);
    return line.at(place).cut;
}

std::vector<std::vector<Point>> strokes_of(const NotchCut& cut, NotchesOnCuttingLine& line,
                                           const NickPlace& at, Point inner) {
    const Vector aside = cut.width_mm / 2 * perpendicular(at.outwards);
    switch (cut.form) {
        case NotchForm::slit:
            break;
        case NotchForm::v:
            return {{met_from(line, inner + aside, at.outwards), inner,
                     met_from(line, inner - aside, at.outwards)}};
        case NotchForm::t:
            return {{at.outer, inner}, {inner + aside, inner - aside}};
        case NotchForm::box:
            return {{met_from(line, inner + aside, at.outwards), inner + aside, inner - aside,
                     met_from(line, inner - aside, at.outwards)}};
    }
    return {{at.outer, inner}};
}

Nick nick_at(const NotchCut& cut, NotchesOnCuttingLine& line, const NickPlace& at) {
    Nick nick;
    nick.outer = at.outer;
    nick.is_cut = at.allowance_mm >= least_notch_mm;
    const double depth = nick.is_cut ? std::min(cut.depth_mm, at.allowance_mm) : uncut_mark_mm;
    nick.inner = at.outer - depth * at.outwards;
    if (nick.is_cut)
        nick.strokes = strokes_of(cut, line, at, nick.inner);
    else
        nick.strokes = {{nick.outer, nick.inner}};
    return nick;
}

/// Says once a place that a notch is not cut as asked.
void note_depth(Markings& markings, const NotchCut& cut, const std::vector<Nick>& nicks,
                const std::string& where) {
    std::string note;
    for (const Nick& nick : nicks) {
        if (!nick.is_cut)
            note = "notch " + where +
                   ": there is no allowance to cut into, so it is only drawn, inside the line";
        else if (note.empty() && distance(nick.outer, nick.inner) < cut.depth_mm - cutting_line_error_mm)
            note = "notch " + where + ": shortened to the allowance there";
    }
    const bool is_said =
        std::find(markings.notes.begin(), markings.notes.end(), note) != markings.notes.end();
    if (!note.empty() && !is_said) markings.notes.push_back(note);
}

void add_notch(Markings& markings, const Piece& piece, const Run& run, const Notch& notch,
               NotchesOnCuttingLine& line, const NotchCut& cut) {
    const std::optional<RunEnd> end = end_named(run, notch.from);
    if (!end) {
        markings.notes.push_back("notch on \"" + notch.edge + "\" left out: it has no end at \"" +
                                 notch.from + "\"");
        return;
    }
    const double at = *end == RunEnd::start ? notch.at : run.length - notch.at;
    const int count = count_of(notch.kind);
    const double wanted = notch_spacing_mm + (cut.form == NotchForm::slit ? 0 : cut.width_mm);
    // The outer ones stay off the corners, where which way is out is not one way.
    constexpr double share_of_room = 0.8;
    const double room = 2 * share_of_room * std::max(0.0, std::min(at, run.length - at));
    const double step = count > 1 ? std::min(wanted, room / (count - 1)) : 0;
    NotchMarking marking{notch.edge, "", {}};
    for (int i = 0; i < count; ++i) {
        const RunPlace place = place_on_run(piece.outline, run, at + (i - 0.5 * (count - 1)) * step);
        const CutNotch met = line.at(place);
        marking.nicks.push_back(nick_at(cut, line, {met.cut, met.outwards, met.width_mm}));
    }
    note_depth(markings, cut, marking.nicks, "on \"" + notch.edge + "\"");
    markings.notches.push_back(std::move(marking));
}

/// Where a leg comes to the line. Where allowances that ran into each other were trimmed, the line may pass
/// beside the end that the leg has without that.
NickPlace on_leg(NotchesOnCuttingLine& line, Point mouth_end, Point leg_end, Point point) {
    RunPlace place;
    place.point = mouth_end;
    const Vector outwards = unit(mouth_end - point);
    place.tangent = perpendicular(outwards);
    const CutNotch met = line.at(place);
    return {met.width_mm > 0 ? met.cut : leg_end, outwards, met.width_mm};
}

/// Nicks at both mouth ends, each in line with its leg.
void add_dart_notch(Markings& markings, const Piece& piece, const CutDart& dart, NotchesOnCuttingLine& line,
                    const NotchCut& cut) {
    NotchMarking marking{"", dart.dart, {}};
    const Legs legs = legs_of_item(piece.outline, dart.item);
    const Point a = start_of(legs.to_point);
    const Point b = end_of(legs.from_point);
    marking.nicks.push_back(nick_at(cut, line, on_leg(line, a, dart.a, dart.point)));
    marking.nicks.push_back(nick_at(cut, line, on_leg(line, b, dart.b, dart.point)));
    note_depth(markings, cut, marking.nicks, "at dart \"" + dart.dart + "\"");
    markings.notches.push_back(std::move(marking));
}

DartMarking dart_marking(const Piece& piece, const CutDart& dart) {
    const DartFigures figures = figures_of(piece.outline, dart.item);
    return {dart.item, dart.dart,  {figures.a, dart.a}, {figures.b, dart.b},
            dart.tip,  dart.point, figures.pivot};
}

struct Reach {
    double from = -INFINITY;
    double to = INFINITY;
};

/// How far one can go from a point both ways along a direction before a side of the polygon or a corner of
/// it; empty if the point is not inside, or lies on a side.
std::optional<Reach> reach_in(const std::vector<Point>& polygon, Point at, Vector along) {
    Reach reach;
    std::size_t before = 0;
    const auto stop_at = [&reach](double where) {
        if (where <= touching_mm) reach.from = std::max(reach.from, where);
        if (where >= -touching_mm) reach.to = std::min(reach.to, where);
    };
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point next = polygon[(i + 1) % polygon.size()];
        const Vector a = polygon[i] - at;
        const Vector b = next - at;
        const double side_a = cross(along, a);
        const double side_b = cross(along, b);
        if (closest_point(Line{polygon[i], next}, at).distance <= touching_mm) return std::nullopt;
        if (std::abs(side_a) <= touching_mm) stop_at(dot(along, a));
        if ((side_a < 0) == (side_b < 0)) continue;
        const double where = dot(along, a + side_a / (side_a - side_b) * (b - a));
        if (where <= 0) ++before;
        stop_at(where);
    }
    if (before % 2 == 0) return std::nullopt;
    return reach;
}

/// The longest arrow in line with the grain that was given, clear of the stitching line and of dart legs.
GrainMarking grain_marking(const Piece& piece, const Grain& grain) {
    const std::vector<Point> flat =
        flat_outline(piece.outline, DartsDrawn::to_points, cutting_line_error_mm).points;
    const Point at = middle(grain.from, grain.to);
    const Vector along = unit(grain.to - grain.from);
    Reach all;
    for (const double aside : {-grain_side_margin_mm, 0.0, grain_side_margin_mm}) {
        const std::optional<Reach> reach = reach_in(flat, at + aside * perpendicular(along), along);
        if (!reach) return {grain.from, grain.to};
        all.from = std::max(all.from, reach->from);
        all.to = std::min(all.to, reach->to);
    }
    if (all.to - all.from < 4 * grain_end_margin_mm - touching_mm) return {grain.from, grain.to};
    return {at + (all.from + grain_end_margin_mm) * along, at + (all.to - grain_end_margin_mm) * along};
}

void require_length(double value_mm, const char* what) {
    if (value_mm > 0 && value_mm <= largest_length_mm) return;
    throw Impossible(std::string("the notch's ") + what + ", " + asked_told(value_mm) +
                         ", is not a length above 0, 10 m at most",
                     std::string("give a ") + what + " above 0");
}

}  // namespace

Markings markings_of(const Piece& piece, const CuttingLine& line, const MarkingRequest& request) {
    const SoundEntry sound(piece);
    require_length(request.notches.depth_mm, "depth");
    require_length(request.notches.width_mm, "width");
    Markings markings;
    const std::vector<Run> runs = runs_of(piece.outline);
    NotchesOnCuttingLine met(line);
    for (const Notch& notch : piece.notches) {
        if (const Run* run = find_run(runs, notch.edge))
            add_notch(markings, piece, *run, notch, met, request.notches);
        else
            markings.notes.push_back("notch left out: the piece has no edge \"" + notch.edge + "\"");
    }
    for (const CutDart& dart : line.darts) {
        markings.darts.push_back(dart_marking(piece, dart));
        if (request.are_darts_notched) add_dart_notch(markings, piece, dart, met, request.notches);
    }
    if (piece.grain && !(piece.grain->from == piece.grain->to))
        markings.grain = grain_marking(piece, *piece.grain);
    for (const std::string& edge : fold_edges(piece)) {
        const Run& fold = *find_run(runs, edge);
        markings.folds.push_back({edge, end_point(piece.outline, fold, RunEnd::start),
                                  end_point(piece.outline, fold, RunEnd::end)});
    }
    for (const Mark& mark : piece.marks)
        if (const DrillMark* drill = std::get_if<DrillMark>(&mark.what)) markings.drills.push_back(*drill);
    return markings;
}

CuttingPiece cutting_piece(const Piece& piece, const CuttingRequest& request,
                           const MarkingRequest& markings) {
    const SoundEntry sound(piece);
    CuttingPiece cut{piece, cutting_line(piece, request), {}, request.undecided_mm};
    cut.markings = markings_of(piece, cut.line, markings);
    return cut;
}

std::vector<std::string> notes_of(const CuttingPiece& cut) {
    std::vector<std::string> notes;
    const std::string undecided = undecided_words(cut.line);
    if (!undecided.empty()) notes.push_back(cut.piece.name + ": " + undecided);
    for (const auto& list : {cut.line.notes, cut.markings.notes}) {
        for (const std::string& note : list) notes.push_back(cut.piece.name + ": " + note);
    }
    return notes;
}

}  // namespace dartwright
