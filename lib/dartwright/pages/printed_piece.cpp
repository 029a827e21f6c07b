#include "dartwright/pages/printed_piece.hpp"

#include <cmath>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {

namespace {

// Two mirrorings make a turn by twice the angle between their lines.
Piece turned_upright(const Piece& piece) {
    if (!piece.grain) return piece;
    const double turn = pi / 2 - angle_from({1, 0}, piece.grain->to - piece.grain->from);
    // A grain that stands upright already to rounding leaves every number as it is.
    if (std::abs(sine_of(turn / 2)) < upright_rounding_rad) return piece;
    const MirrorLine level{{}, {1, 0}};
    return mirrored({{}, {cosine_of(turn / 2), sine_of(turn / 2)}}, mirrored(level, piece));
}

DrawnGroup drawing_of(const CuttingPiece& cut, const CuttingLabel& label) {
    DrawnGroup drawing = draw_cutting_piece(cut, label);
    // The sheet is paper already.
    std::erase_if(drawing.groups, [](const DrawnGroup& layer) { return layer.name == "paper"; });
    return drawing;
}

}  // namespace

PrintedPiece printed_piece(const Piece& piece, const Pattern& pattern, const CuttingLabel& general) {
    const SoundEntry sound(piece, pattern);
    const CuttingLabel label = label_of_piece(general, pattern, piece.name);
    // Turned before it is drawn, so that its words are upright too.
    const CuttingPiece cut =
        cutting_piece(turned_upright(piece), cutting_request(pattern, piece), marking_request(pattern));
    PrintedPiece printed{piece.name, drawing_of(cut, label), cut.line.points, pi / 2, notes_of(cut), {}};
    printed.taken_in = taken_in_words(piece, runs_of(piece.outline), pattern.unit);
    printed.drawn_off = [cut, label](const std::vector<Line>& joints) {
        CuttingLabel with_joints = label;
        with_joints.joints = joints;
        return drawing_of(cut, with_joints);
    };
    return printed;
}

}  // namespace dartwright
