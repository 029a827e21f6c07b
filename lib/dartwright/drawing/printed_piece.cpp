#include "dartwright/drawing/printed_piece.hpp"

#include <algorithm>

#include "dartwright/cutting/applied_rule.hpp"

namespace dartwright {

PrintedPiece printed_piece(const Piece& piece, const Pattern& pattern, const CuttingLabel& label) {
    const CuttingPiece cut = cutting_piece(piece, cutting_request(pattern, piece), marking_request(pattern));
    PrintedPiece printed{piece.name, draw_cutting_piece(cut, label), cut.line.points, pi / 2, {}};
    // The sheet is paper already.
    std::erase_if(printed.drawing.groups, [](const DrawnGroup& layer) { return layer.name == "paper"; });
    if (piece.grain) printed.grain_rad = angle_from({1, 0}, piece.grain->to - piece.grain->from);
    printed.notes = notes_of(cut);
    return printed;
}

}  // namespace dartwright
