#pragma once

// One pattern written in other ways that mean the same: begun at another item, with edges divided, with items
// of no length put in.

#include "dartwright/geometry/arc_length.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

inline Outline begun_at(const Outline& outline, std::size_t first) {
    Outline out;
    out.start = start_of_item(outline, first);
    for (std::size_t k = 0; k < outline.items.size(); ++k)
        out.items.push_back(outline.items[(first + k) % outline.items.size()]);
    return out;
}

/// The edge item in two at the parameter; splines are left whole.
inline Outline divided(Outline outline, std::size_t item, double t) {
    EdgeItem* edge = outline.items[item].as_edge();
    if (!edge || std::holds_alternative<SplineShape>(edge->shape)) return outline;
    const Curve whole = curves_of_item(outline, item).front();
    const CurveHalves halves = split_at(whole, t);
    const double share = length(halves.before) / length(whole);
    OutlineItem before = outline.items[item];
    OutlineItem after = before;
    before.to = end_of(halves.before);
    before.as_edge()->fullness = edge->fullness * share;
    after.as_edge()->fullness = edge->fullness * (1 - share);
    if (const Cubic* cubic = std::get_if<Cubic>(&halves.before)) {
        const Cubic& second = std::get<Cubic>(halves.after);
        before.as_edge()->shape = CubicShape{{cubic->p[1], cubic->p[2]}};
        after.as_edge()->shape = CubicShape{{second.p[1], second.p[2]}};
    }
    outline.items[item] = after;
    outline.items.insert(outline.items.begin() + std::ptrdiff_t(item), before);
    return outline;
}

/// An item of no length before the item, of the run that it is on or of the one beside it.
inline Outline with_point(Outline outline, std::size_t item, bool may_round = true) {
    const std::size_t n = outline.items.size();
    std::size_t named = item;
    const bool is_of_next = *rc::gen::arbitrary<bool>();
    while (!outline.items[named].as_edge()) named = is_of_next ? (named + 1) % n : (named + n - 1) % n;
    if (!is_of_next && named == item) {
        named = (item + n - 1) % n;
        while (!outline.items[named].as_edge()) named = (named + n - 1) % n;
    }
    const Point at = start_of_item(outline, item);
    const Vector off{real_between(-1e-7, 1e-7), real_between(-1e-7, 1e-7)};
    EdgeItem edge{outline.items[named].as_edge()->edge, StraightShape{}, 0};
    Point to = at;
    switch (*evenly(0, 4)) {
        case 0:
            edge.shape = CubicShape{{at, at}};
            break;
        case 1:
            edge.shape = CubicShape{{at + off, at - off}};
            break;
        case 2:
            // Not quite nothing: the direction of its rounding means nothing either.
            if (item > 0 && may_round) to = at + off;
            break;
        default:
            break;
    }
    outline.items.insert(outline.items.begin() + std::ptrdiff_t(item), OutlineItem{edge, to});
    return outline;
}

struct Writing {
    bool may_divide = true;
    bool may_begin_elsewhere = true;
    bool may_round = true;     ///< items of rounding size, which turn the directions of short parts
    double least_share = 0.3;  ///< of an edge, that a part has
};

/// A few of these changes, each at a drawn place. Edges of 25 mm or more are divided.
inline Outline written_otherwise(Outline outline, Writing writing = {}) {
    const int changes = *evenly(1, 5);
    for (int k = 0; k < changes; ++k) {
        const std::size_t item = any_index_of(outline.items);
        const int kind = *evenly(0, 3);
        if (kind == 0 && writing.may_begin_elsewhere) {
            outline = begun_at(outline, item);
        } else if (kind == 1 && writing.may_divide) {
            const bool is_edge = outline.items[item].as_edge() != nullptr;
            if (is_edge && length_of_item(outline, item) > 25)
                outline = divided(outline, item, real_between(writing.least_share, 1 - writing.least_share));
        } else {
            outline = with_point(outline, item, writing.may_round);
        }
    }
    return outline;
}

inline Pattern written_otherwise(Pattern pattern, Writing writing = {}) {
    for (Piece& piece : pattern.pieces) piece.outline = written_otherwise(piece.outline, writing);
    return pattern;
}

}  // namespace dartwright::testing
