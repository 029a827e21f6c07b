#pragma once

// Private to the library: what several checks ask of one piece, worked out once.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A place where the outline meets itself. Either item may be a dart (then one of its legs is meant).
struct OutlineMeeting {
    std::size_t first = 0;  ///< outline items, first <= second
    std::size_t second = 0;
    Point place;
};

struct PieceContext {
    const Piece* piece = nullptr;
    std::size_t index = 0;  ///< in the pattern
    Unit unit = Unit::mm;   ///< of the pattern, in which it is spoken of
    double gap = 0;
    bool is_closed = false;         ///< to the gap tolerance; nothing below is filled in otherwise
    std::optional<Outline> mended;  ///< closed exactly, without items of no length where their run has others
    std::vector<Run> runs;
    std::vector<std::optional<DartFigures>> darts;  ///< by outline item
    FlatOutline flat;                               ///< darts to their points
    std::vector<OutlineMeeting> meetings;           ///< one a place

    /// The piece's outline, ending exactly where it starts, each item with a direction (but for a run that is
    /// one point). Its items are not counted as in the piece.
    const Outline& outline() const { return mended ? *mended : piece->outline; }
    const std::string& name() const { return piece->name; }
};

/// O(n log n) in the flattened outline's vertices.
PieceContext context_of(const Piece& piece, std::size_t index, const Tolerances& tolerances);
std::vector<PieceContext> contexts_of(const Pattern& pattern, const Tolerances& tolerances);

/// Meetings of the outline with itself nearer to each other than this are one crossing: a crossing on a
/// flattened curve or through a joint shows in several pairs of sides. Larger: two real crossings are told as
/// one; smaller: one crossing is told several times.
inline constexpr double same_crossing_mm = 1;

/// Directions of an edge item at its ends, as unit vectors (zero for an item without length).
Vector direction_at_start(const Outline& outline, std::size_t item);
Vector direction_at_end(const Outline& outline, std::size_t item);

}  // namespace dartwright
