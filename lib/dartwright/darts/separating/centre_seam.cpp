#include "dartwright/darts/separating/centre_seam.hpp"

#include <algorithm>
#include <utility>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

bool is_second_fold_wanted(const Cut& cut, const std::vector<std::string>& targets) {
    return !cut.second_fold.empty() &&
           std::any_of(targets.begin(), targets.end(),
                       [&](const std::string& target) { return target.starts_with(cut.second_fold + "@"); });
}

// The ends that are the run's; of two folds the other may have one of that name too.
std::map<std::string, CornerIs> ends_of_run(const std::map<std::string, CornerIs>& ends, const Run& run) {
    std::map<std::string, CornerIs> out;
    for (const auto& [name, corner] : ends)
        if (end_named(run, name)) out.emplace(name, corner);
    return out;
}

}  // namespace

Pattern with_centre_seam(Pattern pattern, const CentreSeam& wanted, Notes notes) {
    const std::string& seam_name = wanted.name;
    if (seam_name.empty()) return pattern;
    require_name(seam_name);
    Piece& piece = pattern.pieces[piece_index(pattern, wanted.piece)];
    if (!piece.cut || piece.cut->fold.empty()) {
        throw Impossible(quoted(piece.name) + " is not cut on a fold, so that none can become a seam",
                         "leave the centre seam out");
    }
    for (const Seam& seam : pattern.seams) {
        if (seam.name == seam_name)
            throw BadWords("there is a seam " + quoted(seam_name) + " already; expected another name");
    }
    Cut& cut = *piece.cut;
    if (is_second_fold_wanted(cut, wanted.targets)) std::swap(cut.fold, cut.second_fold);
    const std::string fold = cut.fold;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = run_named(runs, fold, piece.name);
    const SeamPart side{piece.name, fold, name_of_end(run, RunEnd::start), false};
    SeamPart mirrored = side;
    mirrored.mirrored = true;
    pattern.seams.push_back(
        {seam_name, {SeamSide{side}, SeamSide{mirrored}}, {}, ends_of_run(cut.ends, run)});
    cut.fold = std::exchange(cut.second_fold, "");
    cut.ends = cut.fold.empty() ? std::map<std::string, CornerIs>{}
                                : ends_of_run(cut.ends, run_named(runs, cut.fold, piece.name));
    cut.quantity *= 2;
    notes.push_back("the fold " + quoted(fold) + " is the seam " + quoted(seam_name) +
                    " now, and the piece is cut as a pair; decide its allowance");
    return pattern;
}

}  // namespace dartwright
