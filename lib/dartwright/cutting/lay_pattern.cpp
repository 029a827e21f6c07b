#include "dartwright/cutting/lay_pattern.hpp"

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

Pattern without_folds(Pattern pattern) {
    const Pattern folded = pattern;
    for (const Piece& piece : folded.pieces) {
        if (piece.cut && !piece.cut->fold.empty()) pattern = open(pattern, {piece.name}).pattern;
    }
    return pattern;
}

}  // namespace

PatternLay lay_pattern(const Pattern& pattern, const LayRequest& request) {
    const SoundEntry sound(pattern);
    PatternLay result;
    result.request = request;
    const Pattern laid = request.is_folded ? pattern : without_folds(pattern);
    std::vector<LayPiece> pieces;
    for (const Piece& piece : laid.pieces) {
        const CuttingRequest cutting = cutting_request(laid, piece);
        const CuttingLine line = cutting_line(piece, cutting);
        if (!line.undecided.empty()) result.notes.push_back(piece.name + ": " + undecided_words(line));
        pieces.push_back(lay_piece(piece, line, cutting.tolerances, result.notes));
    }
    result.lay = lay(pieces, request);
    result.notes.insert(result.notes.end(), result.lay.notes.begin(), result.lay.notes.end());
    return result;
}

}  // namespace dartwright
