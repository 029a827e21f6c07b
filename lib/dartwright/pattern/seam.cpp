#include "dartwright/pattern/seam.hpp"

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

double signed_ease(const Seam& seam) {
    if (!seam.ease) return 0;
    return seam.ease->side == 2 ? seam.ease->amount : -seam.ease->amount;
}

double seam_difference(const Pattern& pattern, const Seam& seam) {
    double sides[2] = {0, 0};
    for (std::size_t side = 0; side < 2; ++side) {
        for (const SeamPart& part : seam.joins[side]) {
            const std::vector<Run> runs = runs_of(piece_named(pattern, part.piece).outline);
            sides[side] += run_named(runs, part.edge, part.piece).length;
        }
    }
    return sides[1] - sides[0] - signed_ease(seam);
}

}  // namespace dartwright
