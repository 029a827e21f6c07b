#pragma once

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// A straight line to mirror in. Precondition of what uses it: `along` has length 1.
struct MirrorLine {
    Point at;
    Vector along{0, 1};
};

Point mirrored(const MirrorLine& line, Point p);
/// The mirror image, walked the same way.
Curve mirrored(const MirrorLine& line, const Curve& curve);
/// The mirror image, walked the other way so that it is anticlockwise again. Items that were in the order
/// 0, 1, ..., n - 1 are in the order n - 1, ..., 1, 0.
Outline mirrored(const MirrorLine& line, const Outline& outline);
/// The same of all that a piece has. Its runs are walked the other way, so that the reserved words `start`
/// and `end` change places; the other side of its cloth lies up, so that left and right stay the wearer's.
Piece mirrored(const MirrorLine& line, Piece piece);

/// `end` for `start` and the other way round; any other name as it is.
std::string with_end_words_swapped(const std::string& from);

}  // namespace dartwright
