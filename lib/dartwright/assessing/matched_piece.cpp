#include "dartwright/assessing/matched_piece.hpp"

#include <map>

#include "dartwright/assessing/renamed_piece.hpp"
#include "dartwright/assessing/scaled_piece.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {

DraftedPiece drafted_piece(Piece piece) {
    if (signed_area(piece.outline, DartsDrawn::to_points) < 0) {
        piece.outline = reversed(piece.outline);
        for (Notch& notch : piece.notches) notch.from = with_end_words_swapped(notch.from);
    }
    DraftedPiece out;
    out.gap_mm = gap_of(piece.outline);
    piece.outline = with_gap_closed(std::move(piece.outline));
    out.shaped = {std::move(piece), {}};
    out.shaped.runs = runs_of(out.shaped.piece.outline);
    out.runs = signatures_of(out.shaped);
    return out;
}

namespace {

// New names for the draft's edges. One that is none of the exercise's makes way if its name is taken.
std::map<std::string, std::string> new_names(const ShapedPiece& expected, const ShapedPiece& drawn,
                                             const RunMatching& runs, std::vector<std::string>& renamed) {
    std::map<std::string, std::string> names;
    for (std::size_t i = 0; i < expected.runs.size(); ++i) {
        if (!runs.drawn[i]) continue;
        const std::string& old = drawn.runs[*runs.drawn[i]].edge;
        names[old] = expected.runs[i].edge;
        if (old != expected.runs[i].edge)
            renamed.push_back(quoted(old) + " is " + quoted(expected.runs[i].edge));
    }
    for (const Run& run : drawn.runs)
        if (!names.contains(run.edge) && find_run(expected.runs, run.edge))
            names[run.edge] = run.edge + " (other)";
    return names;
}

}  // namespace

MatchedPiece matched_piece(const DraftedPiece& drawn, const KnownAs& as, double scale) {
    const ShapedPiece& expected = as.known;
    const RunMatching& runs = as.runs;
    MatchedPiece out;
    out.is_mirrored = runs.is_mirrored;
    out.gap_mm = drawn.gap_mm / scale;
    Piece piece =
        with_edges_renamed(drawn.shaped.piece, new_names(expected, drawn.shaped, runs, out.renamed));
    out.renamed.insert(out.renamed.begin(), drawn.renamed.begin(), drawn.renamed.end());
    if (piece.name != expected.piece.name)
        out.renamed.insert(out.renamed.begin(), quoted(piece.name) + " is " + quoted(expected.piece.name));
    piece.name = expected.piece.name;
    if (out.is_mirrored) piece = mirrored(MirrorLine{}, std::move(piece));
    if (scale != 1) piece = scaled(std::move(piece), 1 / scale);
    out.shaped = {std::move(piece), {}};
    out.shaped.runs = runs_of(out.shaped.piece.outline);
    return out;
}

}  // namespace dartwright
