#pragma once

// Private to the room: the cutting line beside a dart's mouth, walked away from it as it lies when the other
// darts are sewn.

#include <optional>

#include "dartwright/cutting/raw_line.hpp"
#include "dartwright/darts/folding/folded_cap.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright::cutting {

/// Walks the line from a mouth end away from its dart. Each dart on the way is closed, so that what lies
/// beyond it is moved; at an edge on a fold the walk goes on along the half that lies under the piece. It
/// ends where it comes back to the dart, or to a fold again.
class LineWalk {
  public:
    /// The piece and the line must outlive the walk.
    LineWalk(const Piece& piece, const RawLine& line, std::size_t mouth, PressSide side);
    std::optional<BesideMouth> next();

  private:
    Point placed(Point p) const;
    bool is_on_fold(const CutSide& side) const;
    std::optional<std::size_t> mouth_between(std::size_t from, std::size_t to) const;
    void go_over_fold(const CutSide& fold);
    void close(std::size_t mouth);

    const Piece& piece_;
    const RawLine& line_;
    std::size_t mouth_;
    bool is_forward_;
    std::size_t at_;  ///< the point come to
    std::string own_edge_;
    bool is_beyond_corner_ = false;
    bool is_over_fold_ = false;
    MirrorLine fold_;
    Motion drawn_;   ///< before the mirroring in the fold
    Motion motion_;  ///< after it
    std::size_t steps_left_;
};

}  // namespace dartwright::cutting
