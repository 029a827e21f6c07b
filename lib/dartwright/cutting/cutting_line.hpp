#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/press.hpp"

namespace dartwright {

/// How the allowances of two edges meet at a corner.
enum class CornerKind {
    met,      ///< both cutting lines are carried on straight until they meet
    squared,  ///< `whose` is sewn on to the cutting line of its neighbour; there its allowance ends square to
              ///< it
    mirrored,  ///< so too, but its allowance ends in the mirror image of the neighbour's cutting line: folded
               ///< over along the seam, as when it is pressed to one side or open, the two lie on each other
    carried_on,  ///< the cutting line of `whose` goes on straight to that of its neighbour
    blunted      ///< met, but cut off square to the corner where it would stand out too far
};
/// `met`, `squared`, `mirrored`, `carried on`, `blunted`.
std::string to_text(CornerKind kind);

/// What is asked for at the corner of two edges, in whichever order they are named.
struct CornerRequest {
    std::array<std::string, 2> edges;
    CornerKind kind = CornerKind::met;
    std::string whose;  ///< one of the two: the edge of which the kind speaks; not for `met`, `blunted`
    std::optional<double> limit_mm;  ///< blunted: how far from the corner of the stitching line it is cut off
};

/// A met corner that would stand out from the corner of the stitching line by more than so many times the
/// wider allowance is blunted there. With equal allowances: a corner of less than 29 degrees.
inline constexpr double sharpest_corner = 4;

/// A dart of which the cloth between the legs is cut away.
struct DartTrimming {
    std::string dart;
    double width_mm = 0;  ///< what is left along each leg
};

struct CuttingRequest {
    std::optional<double>
        undecided_mm;  ///< for edges without an allowance; without it they have none, and are listed
    std::vector<CornerRequest> corners;  ///< the others are met
    std::vector<DartTrimming> trimmed;   ///< the cloth of the other darts is kept
    Tolerances tolerances;
    /// Say where allowances that ran into each other were trimmed, which costs several times the line itself.
    bool tells_trimmed = false;
    Unit unit = Unit::mm;  ///< in which its notes speak
};

enum class CutPart {
    edge,    ///< beside an edge
    corner,  ///< between two edges
    step,    ///< square across, from one width to another; and where an edge bends in more tightly than its
             ///< width, round what its normals sweep over
    mouth,   ///< over the mouth of a dart
    leg      ///< along a leg of a trimmed dart
};
/// What a side of the cutting line belongs to. The item is one of the outline: the edge; before a corner or a
/// step the edge that ends there; the dart.
struct CutSide {
    CutPart part = CutPart::edge;
    std::size_t item = 0;
    double width_mm = 0;  ///< of an edge
};

/// A dart on the cutting line.
struct CutDart {
    std::size_t item = 0;  ///< of the outline
    std::string dart;
    Point a;    ///< where the leg from the point through A comes to the cutting line
    Point b;    ///< and the leg through B
    Point tip;  ///< on the dart's centre line: of the cap, or half way from A' to B'
    Point point;
    Vector centre;                     ///< unit, along the centre line from the point towards the mouth
    std::optional<PressSide> pressed;  ///< the side for which the cap is cut
    bool is_capped = false;            ///< else the cutting line goes straight across; `notes` says why
};

/// A corner of two edges as it was made.
struct CutCorner {
    std::array<std::string, 2> edges;  ///< in outline order
    Point at;                          ///< on the stitching line
    CornerKind kind = CornerKind::met;
    bool is_step = false;  ///< the wider allowance ends square, the narrower runs up to it
};

/// A stretch of a run that has no allowance in the pattern, by sewn distance from the run's anticlockwise
/// start.
struct UndecidedStretch {
    std::string edge;
    double from_mm = 0;
    double to_mm = 0;
};

/// Where allowances ran into each other and were trimmed, so that an edge has less than its own: a stretch of
/// a run by sewn distance from its anticlockwise start, or the cloth of a dart.
struct TrimmedPlace {
    std::string edge;  ///< empty at a dart
    std::string dart;
    double from_mm = 0;
    double to_mm = 0;
    Point at;  ///< on the stitching line in its middle; of a dart, in the middle of its mouth
};

/// Closed and anticlockwise; side i runs from points[i] to points[i + 1], the last one to points[0].
struct CuttingLine {
    std::vector<Point> points;
    std::vector<CutSide> sides;
    std::vector<CutDart> darts;      ///< in outline order
    std::vector<CutCorner> corners;  ///< in outline order
    std::vector<UndecidedStretch> undecided;
    std::vector<std::string> notes;
    bool is_cleaned = false;  ///< allowances that ran into each other were trimmed
    /// Where, if that was asked for: in outline order, then darts. None for what nobody sees, less than half
    /// a millimetre.
    std::vector<TrimmedPlace> trimmed;
};

/// A width that is no width, or too large for its piece: more than half the smaller side of the box round it.
class BadWidth : public Impossible {
  public:
    BadWidth(std::string piece_, std::string edge_, double width_mm_, double limit_mm_);
    std::string piece;
    std::string edge;
    double width_mm;
    double limit_mm;  ///< the widest that works
};

/// The clean-up of allowances that run into each other did not come to an end in its rounds (each moves
/// points by no more than a thousandth of the line's error). A line that crosses itself, or goes round less
/// than half the piece, is never handed out.
class NotCleaned : public Impossible {
  public:
    explicit NotCleaned(std::string piece_);
    std::string piece;
};

/// The line along which a piece is cut: outside its stitching line by the allowance of each edge.
///
/// Properties: (1) a simple polygon round the stitching line, which is not changed; (2) beside an edge every
/// point is its allowance away from the true curve to `cutting_line_error_mm`, and none is nearer but where a
/// corner's kind says so; (3) the cutting line of a mirrored piece is the mirror image; (4) without
/// allowances it is the stitching line. The edge on the fold has none. Where the widths of neighbours differ
/// so much that the narrower would be met only beyond the end of the wider, the wider ends square: a step.
///
/// At a dart the cutting line is that of the edge with the dart closed about its point as it is sewn; A' and
/// B' lie on the lines from the point through the mouth ends.
///
/// Items of no length are left out, and so are runs that are one point, with their corners; parts of one line
/// or one cubic count as one item, with the number of the first. Items keep their numbers.
///
/// Throws BadWidth; NotCleaned; Impossible (the outline is open by more than `gap`, is one point, or crosses
/// itself so that none goes round it);
/// UnknownName and BadWords for the corners; BadWords for a width for what is undecided, or one left along
/// legs, that is not from 0 to 10 m.
/// Requires a sound piece (problems_of is empty) and tolerances: UnsoundPattern.
CuttingLine cutting_line(const Piece& piece, const CuttingRequest& request = {});

/// BadWords unless it is absent or a width from 0 to 10 m, whether or not a piece has edges to give it to.
void refuse_bad_undecided(std::optional<double> undecided_mm);

/// `no allowance is decided for hem, neck: there is none there`; empty if all are decided.
std::string undecided_words(const CuttingLine& line);

}  // namespace dartwright
