#include "dartwright/darts/centre_seam.hpp"

#include "dartwright/darts/impossible.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {

Pattern with_centre_seam(Pattern pattern, const std::string& piece_name, const std::string& seam_name,
                         std::vector<std::string>& notes) {
    if (seam_name.empty()) return pattern;
    require_name(seam_name);
    Piece& piece = pattern.pieces[piece_index(pattern, piece_name)];
    if (!piece.cut || piece.cut->fold.empty()) {
        throw Impossible(quoted(piece.name) + " is not cut on a fold, so that none can become a seam",
                         "leave the centre seam out");
    }
    for (const Seam& seam : pattern.seams) {
        if (seam.name == seam_name)
            throw BadWords("there is a seam " + quoted(seam_name) + " already; expected another name");
    }
    const std::string fold = piece.cut->fold;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = run_named(runs, fold, piece.name);
    const SeamPart side{piece.name, fold, name_of_end(run, RunEnd::start), false};
    SeamPart mirrored = side;
    mirrored.mirrored = true;
    pattern.seams.push_back({seam_name, {SeamSide{side}, SeamSide{mirrored}}, {}, piece.cut->ends});
    piece.cut->fold.clear();
    piece.cut->ends.clear();
    piece.cut->quantity *= 2;
    notes.push_back("the fold " + quoted(fold) + " is the seam " + quoted(seam_name) +
                    " now, and the piece is cut as a pair; decide its allowance");
    return pattern;
}

}  // namespace dartwright
