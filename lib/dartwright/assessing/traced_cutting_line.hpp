#pragma once

// Private to this room: the exercise's pieces as somebody draws them who traces the cutting line and calls it
// the pattern.

#include <mutex>
#include <optional>
#include <vector>

#include "dartwright/comparing/compared_piece.hpp"

namespace dartwright {

/// The piece with its cutting line for its outline: each edge the stretch beside it, a corner with the edge
/// before it; darts go from there to the same points. Empty if no edge has an allowance, or if its cutting
/// line cannot be drawn. Precondition: a sound piece whose outline is closed. As long as `cutting_line`
/// takes.
std::optional<ShapedPiece> traced_cutting_line(const Piece& piece);

/// Those of many pieces, worked out when somebody first asks; by several threads at once, too.
class TracedCuttingLines {
  public:
    /// In the order of the pieces, which are the same every time; a piece without allowances as it is.
    const std::vector<ShapedPiece>& of(const std::vector<ShapedPiece>& pieces);
    /// Whether any of them has one; asked after `of`.
    bool is_any() const { return is_any_; }

  private:
    std::once_flag once_;
    std::vector<ShapedPiece> traced_;
    bool is_any_ = false;
};

}  // namespace dartwright
