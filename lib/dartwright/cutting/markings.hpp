#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/cutting_line.hpp"

namespace dartwright {

/// How notches are made. The defaults are our own choice within what is common for paper.
struct NotchCut {
    NotchForm form = NotchForm::slit;
    double depth_mm = 5;  ///< from the cutting line inwards
    double width_mm = 4;  ///< at the cutting line, of a T at its bar; a slit has none
};

/// A notch on an edge without allowance is a drawn mark so long inside the line: a cut would go into the
/// garment.
inline constexpr double uncut_mark_mm = 3;
/// An allowance narrower than this is none for a notch, mm: scissors cannot nick less than half a millimetre.
inline constexpr double least_notch_mm = 0.5;
/// From one of a double or triple notch to the next, mm; what they are wide comes on top.
inline constexpr double notch_spacing_mm = 6;
/// What is left free between the grain arrow and the stitching line at its ends, and on either side, mm.
inline constexpr double grain_end_margin_mm = 10;
inline constexpr double grain_side_margin_mm = 3;

struct MarkingRequest {
    NotchCut notches;
    bool are_darts_notched = true;  ///< at both mouth ends
};

/// One of the nicks of a notch.
struct Nick {
    Point outer;  ///< on the cutting line
    Point inner;  ///< straight in from it
    std::vector<std::vector<Point>> strokes;
    bool is_cut = true;  ///< else only drawn
};

struct NotchMarking {
    std::string edge;  ///< empty for one at a dart
    std::string dart;
    std::vector<Nick> nicks;  ///< one, two or three
};

struct DartMarking {
    std::size_t item = 0;  ///< of the outline
    std::string dart;
    std::vector<Point> carried_a;  ///< from the mouth end to the cutting line, along the leg
    std::vector<Point> carried_b;
    Point tip;    ///< where the centre line comes to the cutting line
    Point point;  ///< where the stitching ends
    Point pivot;
};

struct GrainMarking {
    Point from;
    Point to;
};

struct FoldMarking {
    std::string edge;
    Point start;  ///< in outline order
    Point end;
};

/// What is marked on a cut piece, in its own coordinates.
struct Markings {
    std::vector<NotchMarking> notches;  ///< those of edges first, in the piece's order, then those of darts
    std::vector<DartMarking> darts;     ///< in outline order
    std::optional<GrainMarking> grain;
    std::vector<FoldMarking> folds;  ///< none, one, or two where the cloth is folded twice
    std::vector<DrillMark> drills;
    std::vector<std::string> notes;  ///< what is not as asked
};

/// Properties: (1) the outer end of each nick lies on the cutting line; (2) a cut nick is as deep as asked
/// or, where the allowance is narrower, as that, which the notes say; (3) the markings of the mirrored piece
/// are the mirror image; (4) the grain arrow lies inside the stitching line.
///
/// A notch on an edge or from an end that the piece does not have is left out, and said. The grain arrow is
/// the longest one in line with the grain that was given; where there is no room for a margin it is as given.
/// Folds stand in the order of `fold_edges`.
/// Precondition: the line is that of the piece. Throws Impossible for a depth or width that is no length.
/// O((notches + darts) * sides of the line).
/// Requires a sound piece (problems_of is empty): UnsoundPattern.
Markings markings_of(const Piece& piece, const CuttingLine& line, const MarkingRequest& request = {});

/// A piece with all that is needed to cut it.
struct CuttingPiece {
    Piece piece;
    CuttingLine line;
    Markings markings;
    std::optional<double> undecided_mm;  ///< the width where the piece has none
};
/// Throws what `cutting_line` and `markings_of` do.
/// Requires a sound piece (problems_of is empty): UnsoundPattern.
CuttingPiece cutting_piece(const Piece& piece, const CuttingRequest& request,
                           const MarkingRequest& markings = {});
/// What whoever cuts it is told, a sentence each, with the piece's name: undecided allowances, and the notes
/// of its line and markings.
std::vector<std::string> notes_of(const CuttingPiece& cut);

}  // namespace dartwright
