#include "dartwright/pattern/piece.hpp"

#include <cmath>

namespace dartwright {

std::vector<std::string> fold_edges(const Piece& piece) {
    std::vector<std::string> edges;
    if (!piece.cut) return edges;
    if (!piece.cut->fold.empty()) edges.push_back(piece.cut->fold);
    if (!piece.cut->second_fold.empty()) edges.push_back(piece.cut->second_fold);
    return edges;
}

bool is_fold_edge(const Piece& piece, const std::string& edge) {
    return piece.cut && !edge.empty() && (piece.cut->fold == edge || piece.cut->second_fold == edge);
}

std::optional<std::size_t> find_dart(const Piece& piece, const std::string& name) {
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (dart && dart->name == name) return i;
    }
    return std::nullopt;
}

double cloth_area(const Piece& piece) {
    double area = std::abs(signed_area(piece.outline, DartsDrawn::to_pivots));
    for (const DoubleDart& dart : piece.double_darts) {
        // A kite: half the cross product of its diagonals.
        area -= std::abs(cross(dart.to - dart.from, dart.widest[1] - dart.widest[0])) / 2;
    }
    return area;
}

std::array<double, 4> leg_lengths(const DoubleDart& dart) {
    return {distance(dart.from, dart.widest[0]), distance(dart.from, dart.widest[1]),
            distance(dart.to, dart.widest[0]), distance(dart.to, dart.widest[1])};
}

double intake_of(const DoubleDart& dart) {
    return distance(dart.widest[0], dart.widest[1]);
}

}  // namespace dartwright
