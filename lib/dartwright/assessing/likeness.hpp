#pragma once

// Private to this room: how much of a known piece is in another, edge by edge. Covered by strangers_test.cpp.

#include <cstddef>
#include <vector>

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// Two edges are left aside only of as many that both have.
inline constexpr std::size_t fewest_edges = 4;

/// Of all its edges, sewn.
double way_round(const ShapedPiece& shaped);

/// By how much a hand may miss, mm.
struct HandReach {
    double length = 0;        ///< of an edge
    double place = 0;         ///< of a place on it
    bool is_divided = false;  ///< the known piece came of one that a task divided or opened
};

/// How much of each edge of a known piece lies in another as it does in that.
struct Likeness {
    struct Edge {
        double length_mm = 0;
        double near_mm = 0;
        double drawn_mm = 0;  ///< as it was drawn; 0 where it was not
    };
    std::vector<Edge> edges;  ///< in outline order
    double around_mm = 0;     ///< of the longer way round
    double drawn_mm = 0;      ///< as it was drawn, all round
    double near_mm = 0;       ///< of all edges
};
/// Both with the same names of edges. An edge of another length is not there, and does not turn its part.
/// Of a piece that was divided, where all of those lie beside one corner, its two edges hold nothing together
/// either: each side of them lies wherever it was turned to, as beside a mouth. O((n + p) log n) for n curves
/// and p places.
Likeness likeness(const ShapedPiece& known, const ShapedPiece& drawn, const HandReach& reach);

/// 0 to 1, of all of them together. 0 without pieces.
double share_alike(const std::vector<Likeness>& pieces);
/// The same, the two edges beside the worst corner left aside where enough is left to
/// know the pattern by.
double share_but_for_a_slip(const std::vector<Likeness>& pieces);
/// The same, any two edges of a piece left aside.
double share_but_for_two_edges(const std::vector<Likeness>& pieces);

}  // namespace dartwright
