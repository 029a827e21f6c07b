#pragma once

// The patterns of the fixtures, for laws that hold to rounding.

#include <string>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright::testing {

/// The files give places to 0.001 of their unit, so that the two legs of a slanting dart differ a little;
/// here the second is made as long as the first, so that 1e-6 mm can be asked for.
inline void make_legs_equal(Outline& outline) {
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart) continue;
        const Point q = dart->turning_point();
        const double leg = distance(q, start_of_item(outline, i));
        outline.items[i].to = q + leg * unit(outline.items[i].to - q);
    }
}

inline Pattern fixture_with_equal_legs(const std::string& name) {
    Pattern pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/" + name);
    for (Piece& piece : pattern.pieces) make_legs_equal(piece.outline);
    return pattern;
}

}  // namespace dartwright::testing
