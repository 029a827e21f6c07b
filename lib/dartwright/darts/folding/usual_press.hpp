#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// The edge towards which a dart is pressed where nothing says otherwise: an upright one towards the fold (of
/// two, that which runs nearer to the dart's own direction), or the edge along which the grain runs; a level
/// one down to the waist. `axis` is the dart's, upright when it lies nearer to the grain than square to it.
/// Empty if the piece has no such edge.
std::string usual_press(const Piece& piece, Vector axis);

/// The same for many darts of a piece, which is looked at with the first question. The piece must outlive it.
class UsualPress {
  public:
    explicit UsualPress(const Piece& piece) : piece_(piece) {}
    /// O(items) the first time, then O(1).
    std::string towards(Vector axis);

  private:
    struct Edges {
        std::string level;                         ///< empty if the piece has none
        std::string upright;                       ///< so too; where there are not two folds
        std::vector<std::string> folds;            ///< if there are two or more
        std::vector<std::optional<Vector>> along;  ///< the first two of them, from end to end
    };
    static Edges edges_of(const Piece& piece);

    const Piece& piece_;
    std::optional<Edges> edges_;
};

}  // namespace dartwright
