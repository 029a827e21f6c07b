#pragma once

// Private to the room: the polygon of a piece with every dart's wedge drawn to its pivot, on which cuts are
// judged.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {

struct WedgePolygon {
    FlatOutline flat;
    std::vector<std::size_t> first_vertex;  ///< of each item: the vertex where it starts
    std::vector<std::size_t> pivots;        ///< vertices that are dart pivots; these may touch
};
WedgePolygon wedge_polygon(const Outline& outline);

/// What a person calls the item of the outline: `edge "side"` or `dart "waist dart"`.
std::string words_for_item(const Outline& outline, std::size_t item);

/// Why the polygon is not a fair one (its outline crosses itself, or a wedge drawn to its pivot leaves the
/// piece or enters another), or empty.
Sentence trouble_with(const WedgePolygon& polygon, const Outline& outline);

/// What stands in the way of a straight cut from the pivot of the dart to the start of an item, or empty.
Sentence what_blocks_cut(const WedgePolygon& polygon, const Outline& outline, std::size_t dart_item,
                         std::size_t item_at_target);

}  // namespace dartwright
