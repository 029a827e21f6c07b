#include "dartwright/drawing/printed_piece.hpp"

#include <algorithm>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"

namespace dartwright {

namespace {

std::string undecided_note(const Piece& piece, const std::vector<UndecidedStretch>& undecided) {
    std::vector<std::string> edges;
    for (const UndecidedStretch& stretch : undecided) {
        if (std::find(edges.begin(), edges.end(), stretch.edge) == edges.end()) edges.push_back(stretch.edge);
    }
    std::string list;
    for (const std::string& edge : edges) list += (list.empty() ? "" : ", ") + edge;
    return piece.name + ": no allowance is decided for " + list + ", so there is none there";
}

}  // namespace

PrintedPiece printed_piece(const Piece& piece, const Pattern& pattern, const std::string& date) {
    const CuttingPiece cut = cutting_piece(piece, cutting_request(pattern, piece), marking_request(pattern));
    PrintedPiece printed{piece.name,
                         draw_cutting_piece(cut, {pattern.name, {}, date, pattern.unit}),
                         cut.line.points,
                         pi / 2,
                         {}};
    // The sheet is paper already.
    std::erase_if(printed.drawing.groups, [](const DrawnGroup& layer) { return layer.name == "paper"; });
    if (piece.grain) printed.grain_rad = angle_from({1, 0}, piece.grain->to - piece.grain->from);
    if (!cut.line.undecided.empty()) printed.notes.push_back(undecided_note(piece, cut.line.undecided));
    for (const auto& notes : {cut.line.notes, cut.markings.notes}) {
        for (const std::string& note : notes) printed.notes.push_back(piece.name + ": " + note);
    }
    return printed;
}

}  // namespace dartwright
