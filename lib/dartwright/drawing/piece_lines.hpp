#pragma once

#include "dartwright/darts/cap.hpp"
#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/press.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// The lines of one piece, in the piece's own coordinates and without words. Each is a layer of its own,
/// named for what it holds, and empty where the piece has none of it.

/// The caps of a piece's darts, each with its item; those whose press side is known, that can be
/// folded, and whose tip does not stand far out.
struct ItemCap {
    std::size_t item = 0;
    Cap cap;
};
std::vector<ItemCap> caps_of(const Piece& piece, const Tolerances& tolerances);

/// The paper and, in a shade of it, the cloth that darts fold away, as far as their caps.
DrawnGroup paper_of(const Piece& piece, const std::vector<ItemCap>& caps);
/// Stitching line with the legs of its darts; one path, the layer's first item, closed if the outline is.
DrawnGroup outline_lines(const Piece& piece, const Stroke& stroke);
/// The same as far as it is sewn: nothing of a tuck beyond its stitching. A path from each tuck to the next.
DrawnGroup stitched_lines(const Piece& piece, const Stroke& stroke);
/// Nothing ends at the point of a tuck: who cuts and sews needs no dot there.
enum class TuckPoints { shown, left_out };
/// Mouths, centre lines, points and pivots of darts; double darts whole.
DrawnGroup dart_lines(const Piece& piece, TuckPoints tucks = TuckPoints::shown);
/// The cut edge over each mouth, one path a dart.
DrawnGroup cap_lines(const std::vector<ItemCap>& caps);
/// A wavy line along each stretch that is gathered or eased, inside the stitching line.
DrawnGroup fullness_lines(const Piece& piece, const std::vector<Run>& runs);
struct PressedDart {
    std::size_t item = 0;
    PressSide side = PressSide::before;
    double begins_mm = 0;  ///< so far in from the mouth its cloth begins, where the cut edge dips
};
/// The wave that stands for gathers and ease, on the left of a line; and the arrow of a pressed dart. Also
/// for a legend. Precondition of the wave: two points that differ.
DrawnPath wave_over(const std::vector<Point>& line);
std::vector<DrawnItem> press_arrow(Point from, Point tip);
/// An arrow across each leg over which a dart is to lie when it is pressed, from its centre line outwards.
DrawnGroup press_arrows(const Piece& piece, const std::vector<PressedDart>& darts);
/// One, two or three strokes across the run. Notches on a run or from an end that does not exist are left
/// out.
DrawnGroup notch_lines(const Piece& piece, const std::vector<Run>& runs);
/// An arrow as long as the grain was given, pointing both ways.
DrawnGroup grain_lines(const Piece& piece);
/// A bracket beside each fold that points to it. Empty if no fold edge exists.
DrawnGroup fold_lines(const Piece& piece, const std::vector<Run>& runs);
DrawnGroup mark_lines(const Piece& piece);

/// The long stroke of the fold's bracket, from its start to its end in outline order.
struct FoldBracket {
    Point start;
    Point end;
    Vector inwards;  ///< unit, away from the fold
    double depth = 0;
};
/// One for each fold edge that exists.
std::vector<FoldBracket> fold_brackets(const Piece& piece, const std::vector<Run>& runs);

}  // namespace dartwright
