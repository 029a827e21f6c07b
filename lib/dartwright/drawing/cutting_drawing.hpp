#pragma once

#include <string>

#include "dartwright/cutting/markings.hpp"
#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// What a piece's label says besides what the piece knows; lines that are empty are left out.
struct CuttingLabel {
    std::string pattern;
    std::string size;
    std::string date;  ///< as the user writes it
    Unit unit = Unit::mm;
    /// Where pages are joined, in the piece's own coordinates: words keep clear of these lines if they can.
    std::vector<Line> joints = {};
    std::size_t number = 0;  ///< of the piece in its pattern, from 1; 0 if that is not said
    std::size_t pieces = 0;
    std::string sides = {};  ///< whose left and right its names speak of; empty if that is nothing to say
    /// Of each seam whose two widths are meant to differ, the other side's: `side: skirt front has 0.6 cm
    /// there, as meant`.
    std::vector<std::string> meant = {};
};

/// The label with what the pattern knows of the piece: its number, whose left and right, and where the piece
/// that it is sewn to is meant to have another allowance; as it is if the pattern has no such piece.
CuttingLabel label_of_piece(CuttingLabel label, const Pattern& pattern, const std::string& piece);

/// A piece as it is cut, at true size and in its own coordinates: a layer of its name, in it the layers
/// `paper`, `marks`, `cutting line`, `stitching line`, `darts`, `press` (an arrow over the leg on whose side
/// each dart will lie), `notches`, `fullness` (a wave beside what is gathered or eased), `grain`, `fold` and
/// `words`, those left out that it has nothing for. The cutting line is whole and strong, one closed path,
/// the stitching line dashed, a tuck's legs as far as they are stitched. Words lie inside the stitching line
/// and clear of lines; what finds no room stands below.
DrawnGroup draw_cutting_piece(const CuttingPiece& piece, const CuttingLabel& label);

struct CuttingDrawOptions {
    std::optional<double> undecided_mm;      ///< for edges without an allowance; without it they have none
    std::optional<MarkingRequest> markings;  ///< as the pattern's own rule says if absent
    std::string size;
    std::string date;
};

/// The pieces side by side, with what each line means and a bar of 100 mm, or 4 in. Throws what
/// `cutting_piece` does.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
Drawing draw_cutting_pieces(const Pattern& pattern, const CuttingDrawOptions& options = {});
/// The same of pieces of the pattern that are made already.
Drawing draw_cutting_pieces(const Pattern& pattern, const std::vector<CuttingPiece>& pieces,
                            const CuttingLabel& label);

}  // namespace dartwright
