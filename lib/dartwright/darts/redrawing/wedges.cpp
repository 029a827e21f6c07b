#include "dartwright/darts/redrawing/wedges.hpp"

namespace dartwright {
WedgePolygon wedge_polygon(const Outline& outline) {
    WedgePolygon out;
    out.flat = flat_outline(outline, DartsDrawn::to_pivots, decision_chord_error_mm);
    out.first_vertex.assign(outline.items.size(), 0);
    const std::vector<std::size_t>& owner = out.flat.item_of_side;
    for (std::size_t v = owner.size(); v-- > 0;) out.first_vertex[owner[v]] = v;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) out.pivots.push_back(out.first_vertex[i] + 1);
    }
    return out;
}

std::string words_for_item(const Outline& outline, std::size_t item) {
    const OutlineItem& it = outline.items[item];
    if (const EdgeItem* edge = it.as_edge()) return "edge \"" + edge->edge + "\"";
    return "dart \"" + it.as_dart()->name + "\"";
}

Sentence trouble_with(const WedgePolygon& polygon, const Outline& outline) {
    const auto crossings = self_crossings(polygon.flat.points, polygon.pivots, 1);
    if (!crossings.empty()) {
        const SelfCrossing& c = crossings.front();
        return "with the darts drawn to their pivots, " +
               words_for_item(outline, polygon.flat.item_of_side[c.first]) + " meets " +
               words_for_item(outline, polygon.flat.item_of_side[c.second]) + " at " +
               place_told(c.place.x, c.place.y);
    }
    if (!(signed_area(polygon.flat.points) > 0)) return "the outline encloses no cloth";
    return {};
}

Sentence what_blocks_cut(const WedgePolygon& polygon, const Outline& outline, std::size_t dart_item,
                         std::size_t item_at_target) {
    const std::size_t from = polygon.first_vertex[dart_item] + 1;
    const std::size_t to = polygon.first_vertex[item_at_target];
    if (polygon.flat.points[from] == polygon.flat.points[to]) return "the place is the pivot itself";
    const auto blocked = blocked_view(polygon.flat.points, from, to);
    if (!blocked) return {};
    return "the cut from the pivot would cross " +
           words_for_item(outline, polygon.flat.item_of_side[blocked->side]) + " at " +
           place_told(blocked->place.x, blocked->place.y);
}

}  // namespace dartwright
