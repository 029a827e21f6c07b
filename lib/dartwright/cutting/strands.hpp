#pragma once

// Private to the room: the offsets of the curves of an outline, before they are joined.

#include <vector>

#include "dartwright/cutting/edge_widths.hpp"
#include "dartwright/cutting/offset_curve.hpp"

namespace dartwright::cutting {

/// The line beside one curve of an edge, of one width.
struct Strand {
    Strand(std::size_t item_, const ItemWidth& width)
        : item(item_), run(width.run), width_mm(width.width_mm) {}

    std::size_t item;  ///< of the outline
    std::size_t run;   ///< by its number
    double width_mm;
    Vector first_tangent;  ///< of the stitching line, unit
    Vector last_tangent;
    Point end;              ///< of the stitching line
    std::size_t first = 0;  ///< points[first] to points[last]
    std::size_t last = 0;
    std::size_t first_kept = 0;  ///< what its joints leave of them
    std::size_t last_kept = 0;
    std::size_t first_detour = 0;  ///< detours[first_detour], and so many
    std::size_t detours = 0;
    std::size_t darts = 0;  ///< so many follow it before the next strand, from `first_dart` on
    std::size_t first_dart = 0;
};

struct Strands {
    std::vector<Point> points;
    std::vector<Strand> strands;  ///< in outline order
    std::size_t runs = 0;
    std::vector<std::size_t> darts;  ///< items
    std::vector<UndecidedStretch> undecided;
    std::vector<Detour> detours;  ///< of curves that bend inwards more tightly than their width, in order
};

/// Joints may trim a strand, and the legs of darts part it, from its start to its first detour and from its
/// last one to its end. The sides of a detour cross each other and whatever lies beside them in any order, so
/// that what was cut off with some of them would be lost.
inline std::size_t last_before_detours(const Strands& strands, const Strand& strand) {
    return strand.detours == 0 ? strand.last : strands.detours[strand.first_detour].first;
}
inline std::size_t first_after_detours(const Strands& strands, const Strand& strand) {
    return strand.detours == 0 ? strand.first
                               : strands.detours[strand.first_detour + strand.detours - 1].last;
}

/// Precondition: the outline is closed. Throws BadWidth.
Strands strands_of(const Piece& piece, const CuttingRequest& request);

}  // namespace dartwright::cutting
