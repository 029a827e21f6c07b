#include "dartwright/darts/account.hpp"

#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {

std::vector<RunChange> run_changes(const std::vector<Run>& before, const std::vector<Run>& after) {
    std::vector<RunChange> out;
    for (const Run& run : before) {
        const Run* same = find_run(after, run.edge);
        out.push_back({run.edge, run.length, same ? same->length : 0});
    }
    for (const Run& run : after) {
        if (!find_run(before, run.edge)) out.push_back({run.edge, 0, run.length});
    }
    return out;
}

void note_seams_of_changed_runs(const Pattern& pattern, const std::string& piece,
                                const std::vector<RunChange>& runs, Notes notes) {
    // Less than the width of a hair is not worth a word.
    for (const RunChange& run : runs) {
        const double change = run.after_mm - run.before_mm;
        if (std::abs(change) < tenth_of_hair_mm) continue;
        for (const Seam& seam : pattern.seams) {
            for (const SeamSide& side : seam.joins) {
                for (const SeamPart& part : side) {
                    if (part.piece != piece || part.edge != run.edge) continue;
                    notes.push_back(quoted(run.edge) + " in the seam " + quoted(seam.name) + " is " +
                                    difference_told(std::abs(change), 2) + " " +
                                    (change > 0 ? "longer" : "shorter") + " than it was");
                }
            }
        }
    }
}

std::vector<SeamChange> seam_changes(const Pattern& before, const Pattern& after) {
    // Far over the rounding of lengths, far under what a hair's width is.
    std::vector<SeamChange> out;
    for (std::size_t i = 0; i < before.seams.size(); ++i) {
        const double was = seam_difference(before, before.seams[i]);
        const double is = seam_difference(after, after.seams[i]);
        if (std::abs(was - is) > sum_rounding_mm) out.push_back({before.seams[i].name, was, is});
    }
    return out;
}

}  // namespace dartwright
