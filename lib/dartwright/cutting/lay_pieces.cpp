#include "dartwright/cutting/lay_pieces.hpp"

#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/run.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

std::optional<LayPiece::FoldLine> fold_line(const Piece& piece) {
    if (!piece.cut || piece.cut->fold.empty()) return std::nullopt;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& fold = run_named(runs, piece.cut->fold, piece.name);
    const Point from = end_point(piece.outline, fold, RunEnd::start);
    const Vector along = end_point(piece.outline, fold, RunEnd::end) - from;
    if (norm(along) <= empty_item_mm) {
        throw Impossible(
            "the fold " + quoted(fold.edge) + " of " + quoted(piece.name) + " ends where it begins",
            "draw it at its full length, or cut the piece without a fold");
    }
    return LayPiece::FoldLine{from, unit(along)};
}

double degrees_between_lines(Vector a, Vector b) {
    return degrees(angle_of_sine(std::min(1.0, std::abs(cross(a, b)))));
}

}  // namespace

LayPiece lay_piece(const Piece& piece, const CuttingLine& line, const Tolerances& tolerances,
                   std::vector<std::string>& notes) {
    const SoundEntry sound(piece, tolerances);
    LayPiece laid;
    laid.name = piece.name;
    laid.polygon = line.points;
    if (piece.cut && !piece.cut->second_fold.empty()) {
        throw Impossible(quoted(piece.name) + " is laid on two folds, and cloth is folded once here",
                         "fold the cloth twice by hand, or draw the piece with one fold");
    }
    laid.fold = fold_line(piece);
    if (piece.cut) {
        laid.quantity = piece.cut->quantity;
        laid.are_alike = piece.cut->same;
    }
    if (piece.grain) {
        laid.grain = unit(piece.grain->to - piece.grain->from);
    } else {
        notes.push_back(quoted(piece.name) + " has no grain; it is laid as it is drawn");
    }
    if (!laid.fold) return laid;
    const double off = degrees_between_lines(laid.grain, laid.fold->along);
    if (off > tolerances.grain_deg) {
        notes.push_back("the grain of " + quoted(piece.name) + " is " + text_of("%.1f", off) +
                        " degrees off its fold; the fold is laid along the cloth");
    }
    // On the fold it is the fold that says how the piece lies.
    laid.grain = dot(laid.grain, laid.fold->along) < 0 ? -laid.fold->along : laid.fold->along;
    return laid;
}

}  // namespace dartwright
