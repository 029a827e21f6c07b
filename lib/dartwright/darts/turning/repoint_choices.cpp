#include "dartwright/darts/turning/repoint_choices.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/turning/opened_dart.hpp"
#include "dartwright/darts/turning/pivot_choices.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

bool is_same_pivot(Point a, Point b) {
    return distance(a, b) <= one_point_mm;
}

// The point is going to be put anew, so only the mouth has to be true, about the pivot.
DartFigures figures_of_mouth(const Piece& piece, std::size_t dart, double legs_mm) {
    Piece plain = piece;
    DartItem& item = *plain.outline.items[dart].as_dart();
    item.point = item.turning_point();
    item.legs.reset();
    movable_dart(plain, dart, legs_mm);
    return figures_of(piece.outline, dart);
}

double mean_leg(const DartFigures& f) {
    return (f.pivot_leg_a + f.pivot_leg_b) / 2;
}

void note_put_on_line(double beside_mm, Notes notes) {
    // Less than the sentence could show.
    if (beside_mm < least_told_mm) return;
    notes.push_back("the place was " + difference_told(beside_mm, 3) +
                    " off the centre line and was put on it");
}

// How far a point asked for backs off, for a dart whose pivot stays.
double back_off_of_point(const std::string& dart, const DartFigures& f, Point point, Notes notes) {
    const double along = dot(bisector_of(f), point - f.pivot);
    const double beside = std::abs(cross(bisector_of(f), point - f.pivot));
    const double nearest = std::clamp(along, 0.0, mean_leg(f) / 2);
    const Sentence remedy = "the nearest point that does is " +
                            words_of_place(f.pivot + nearest * bisector_of(f)) +
                            "; or give the darts there a new pivot";
    if (beside > one_point_mm) {
        throw Impossible("the point does not lie on the centre line of " + quoted(dart) + " but " +
                             difference_told(beside) + " beside it",
                         remedy);
    }
    if (along < -one_point_mm) {
        throw Impossible("the point does not lie short of the pivot of " + quoted(dart) + " but " +
                             difference_told(-along) + " beyond it",
                         remedy);
    }
    note_put_on_line(std::max(beside, -along), notes);
    return std::max(0.0, along);
}

// The pivot of one dart, beside its centre line by no more than a pencil's point, is meant to be on it.
PlannedMoves put_on_centre_line(PlannedMoves moves, const DartFigures& f, Notes notes) {
    const Vector along = bisector_of(f);
    const double beside = cross(along, moves.pivot - f.pivot);
    if (std::abs(beside) > one_point_mm) return moves;
    note_put_on_line(std::abs(beside), notes);
    moves.pivot = moves.pivot - beside * perpendicular(along);
    moves.darts.front().pivot = moves.pivot;
    return moves;
}

}  // namespace

Sentence words_of_place(Point p) {
    return place_told(p.x, p.y);
}

void refuse_bad_request(const RepointRequest& request) {
    const int ways = int(request.back_off_mm.has_value()) + int(request.point.has_value()) +
                     int(request.pivot.has_value());
    if (ways != 1) throw BadWords("expected one of a back-off, a point and a pivot");
    if (!request.pivot && request.dart.empty()) {
        throw BadWords("the dart is missing; expected the one whose point moves");
    }
    if (request.from && (!request.pivot || !request.dart.empty())) {
        throw BadWords(
            "the old pivot is given beside a dart or without a new one; expected one or the other");
    }
    for (const auto& place : {request.point, request.pivot, request.from}) {
        if (place && !is_finite(*place)) throw BadWords("the coordinates are not numbers");
    }
    require_span(request.span_mm, SpanMayBe::none_or_wide);
}

std::size_t dart_meant(const Piece& piece, const RepointRequest& request) {
    if (!request.dart.empty()) return dart_named(piece, request.dart);
    Sentence pivots;
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        if (request.from && is_same_pivot(dart->turning_point(), *request.from)) return i;
        const bool is_known = std::any_of(found.begin(), found.end(), [&](std::size_t other) {
            return is_same_pivot(piece.outline.items[other].as_dart()->turning_point(),
                                 dart->turning_point());
        });
        if (is_known) continue;
        found.push_back(i);
        pivots += Sentence(pivots.empty() ? "" : ", ") + quoted(dart->name) + " aims at " +
                  words_of_place(dart->turning_point());
    }
    if (found.empty()) {
        throw Impossible("the piece " + quoted(piece.name) + " has no dart", "choose a piece that has one");
    }
    if (request.from) {
        throw BadWords("no dart of " + quoted(piece.name) + " aims at " + words_of_place(*request.from) +
                       "; " + pivots);
    }
    if (found.size() > 1) {
        throw BadWords("the darts of " + quoted(piece.name) + " aim at several pivots; say which: " + pivots);
    }
    return found.front();
}

PlannedMoves planned_moves(const Piece& piece, std::size_t dart, const RepointRequest& request,
                           double legs_mm, Notes notes) {
    const DartItem& meant = *piece.outline.items[dart].as_dart();
    const Point old_pivot = meant.turning_point();
    const bool has_own_pivot = !is_same_pivot(meant.point, old_pivot);
    if (request.back_off_mm || (request.point && has_own_pivot)) {
        const DartFigures f = figures_of_mouth(piece, dart, legs_mm);
        const double wanted = request.back_off_mm ? *request.back_off_mm
                                                  : back_off_of_point(meant.name, f, *request.point, notes);
        const double back_off = back_off_chosen(wanted, f, mean_leg(f));
        return {{{meant.name, old_pivot, back_off, true}}, old_pivot, old_pivot, request.span_mm};
    }
    PlannedMoves moves{{}, old_pivot, request.point ? *request.point : *request.pivot, request.span_mm};
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* each = piece.outline.items[i].as_dart();
        if (!each || !(each->turning_point() == old_pivot)) continue;
        if (request.point && i != dart) {
            notes.push_back(quoted(each->name) + " still aims at the old place");
            continue;
        }
        moves.darts.push_back(
            {each->name, moves.pivot, std::max(0.0, figures_of_mouth(piece, i, legs_mm).back_off), false});
    }
    if (moves.darts.size() > 1) return moves;
    return put_on_centre_line(moves, figures_of(piece.outline, dart), notes);
}

}  // namespace dartwright
