#include "dartwright/checks/piece_context.hpp"

#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/empty_items.hpp"

namespace dartwright {
namespace {

// Enough to tell every crossing of a drawing that anyone could have meant.
constexpr std::size_t most_meetings = 256;

// Draws all points of darts that count as one in one place, and says which vertices lie there: at those the
// outline may touch itself.
std::vector<std::size_t> snap_to_points(FlatOutline& flat, const Outline& outline) {
    std::vector<Point> places;
    const auto add = [&places](Point p) {
        for (const Point q : places) {
            if (distance(p, q) < one_point_mm) return;
        }
        places.push_back(p);
    };
    for (const OutlineItem& item : outline.items) {
        const DartItem* dart = item.as_dart();
        if (!dart) continue;
        add(dart->turning_point());
        add(dart->point);
    }
    std::vector<std::size_t> touching;
    for (const Point place : places) {
        for (std::size_t i = 0; i < flat.points.size(); ++i) {
            if (squared_norm(flat.points[i] - place) >= one_point_mm * one_point_mm) continue;
            flat.points[i] = place;
            touching.push_back(i);
        }
    }
    return touching;
}

std::size_t darts_in(const Outline& outline, const OutlineMeeting& meeting) {
    return (outline.items[meeting.first].as_dart() ? 1u : 0u) +
           (outline.items[meeting.second].as_dart() ? 1u : 0u);
}

// One a place; of several pairs of items that meet there the one with the most darts.
std::vector<OutlineMeeting> meetings_of(const Outline& outline, const FlatOutline& flat,
                                        const std::vector<std::size_t>& may_touch) {
    std::vector<OutlineMeeting> meetings;
    for (const SelfCrossing& crossing : self_crossings(flat.points, may_touch, most_meetings)) {
        const std::size_t i = flat.item_of_side[crossing.first];
        const std::size_t j = flat.item_of_side[crossing.second];
        const OutlineMeeting meeting{std::min(i, j), std::max(i, j), crossing.place};
        bool is_known = false;
        for (OutlineMeeting& known : meetings) {
            if (distance(known.place, meeting.place) >= same_crossing_mm) continue;
            if (darts_in(outline, meeting) > darts_in(outline, known)) known = meeting;
            is_known = true;
            break;
        }
        if (!is_known) meetings.push_back(meeting);
    }
    return meetings;
}

}  // namespace

PieceContext context_of(const Piece& piece, std::size_t index, const Tolerances& tolerances) {
    PieceContext context;
    context.piece = &piece;
    context.index = index;
    context.gap = gap_of(piece.outline);
    context.is_closed = context.gap <= tolerances.gap_mm;
    if (!context.is_closed) return context;
    if (context.gap > 0) context.mended = with_gap_closed(piece.outline);
    if (has_spare_items(context.outline())) context.mended = without_spare_items(context.outline()).outline;
    const Outline& outline = context.outline();
    context.runs = runs_of(outline);
    context.darts.resize(outline.items.size());
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) context.darts[i] = figures_of(outline, i);
    }
    context.flat = flat_outline(outline, DartsDrawn::to_points, decision_chord_error_mm);
    const std::vector<std::size_t> may_touch = snap_to_points(context.flat, outline);
    context.meetings = meetings_of(outline, context.flat, may_touch);
    return context;
}

std::vector<PieceContext> contexts_of(const Pattern& pattern, const Tolerances& tolerances) {
    std::vector<PieceContext> contexts;
    contexts.reserve(pattern.pieces.size());
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        contexts.push_back(context_of(pattern.pieces[i], i, tolerances));
        contexts.back().unit = pattern.unit;
    }
    return contexts;
}

Vector direction_at_start(const Outline& outline, std::size_t item) {
    return tangent_at_start(curves_of_item(outline, item).front());
}

Vector direction_at_end(const Outline& outline, std::size_t item) {
    return tangent_at_end(curves_of_item(outline, item).back());
}

}  // namespace dartwright
