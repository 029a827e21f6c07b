#include "dartwright/darts/turning/prepared_piece.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

Outline closed_outline(const Piece& piece, double gap_mm, Notes notes) {
    const double gap = gap_of(piece.outline);
    if (gap > gap_mm) {
        throw Impossible(
            "the outline of " + quoted(piece.name) + " does not close, by " + difference_told(gap),
            "close it first");
    }
    if (gap > 0) notes.push_back("a gap of " + difference_told(gap, 4) + " in the outline was closed");
    return with_gap_closed(piece.outline);
}

void snap_pivots(Outline& outline, std::size_t dart, Notes notes) {
    const Point pivot = outline.items[dart].as_dart()->turning_point();
    for (OutlineItem& item : outline.items) {
        DartItem* other = item.as_dart();
        if (!other || other->turning_point() == pivot) continue;
        const double apart = distance(other->turning_point(), pivot);
        if (apart > one_point_mm) continue;
        if (!other->pivot) other->point = pivot;
        if (other->pivot) other->pivot = pivot;
        notes.push_back("the pivot of " + quoted(other->name) + " was " + difference_told(apart, 3) +
                        " away and is taken as the same");
    }
}

}  // namespace

Piece prepared_piece(const Piece& piece, std::size_t dart, const Tolerances& tolerances, Notes notes) {
    Piece out = piece;
    out.outline = closed_outline(piece, tolerances.gap_mm, notes);
    snap_pivots(out.outline, dart, notes);
    return out;
}

}  // namespace dartwright
