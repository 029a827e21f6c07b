#include "dartwright/assessing/run_facts.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/ladder.hpp"
#include "dartwright/checks/walked_seam.hpp"
#include "dartwright/geometry/elementary.hpp"

namespace dartwright {
namespace {

double nearer_to_zero(double value, double by) {
    return std::copysign(std::max(0.0, std::abs(value) - by), value);
}

// As much as the legs of darts in the run make of its length: unequal ones, and those that were drawn into
// the cloth of a run that was never spread.
double explained_by_darts(const DraftFacts& facts, const RunFact& run) {
    double explained = 0;
    for (const DartFact& dart : facts.darts) {
        if (!dart.found || dart.asked->piece != run.piece || dart.found->edge != run.edge) continue;
        if (facts.has_legs_off(dart)) explained += dart.legs_off_mm;
        if (facts.is_copied(dart)) explained += dart.found->figures.intake;
    }
    return explained;
}

// As much as a neighbour that changed more makes of this run's length by the corner between them.
double explained_by_corners(const DraftFacts& facts, const std::vector<RunFact>& runs, const RunFact& fact) {
    const ShapedPiece& shaped = facts.plan->finished[fact.piece];
    const Run* run = find_run(shaped.runs, fact.edge);
    double explained = 0;
    for (const RunEnd end : {RunEnd::start, RunEnd::end}) {
        const std::string& beside = end == RunEnd::start ? run->before : run->after;
        const auto neighbour = std::find_if(runs.begin(), runs.end(), [&](const RunFact& each) {
            return each.piece == fact.piece && each.edge == beside;
        });
        if (neighbour == runs.end() || !is_off(facts.lengths(), neighbour->off_mm)) continue;
        const double moved = std::abs(neighbour->off_mm);
        if (moved <= std::abs(fact.off_mm)) continue;
        const double corner = corner_angle(shaped.piece.outline, *run, end);
        explained += moved * std::abs(cosine_of(corner)) + moved * moved / std::max(run->length, 1.0);
    }
    return explained;
}

double off_of_side(const DraftFacts& facts, const SeamSide& side) {
    double off = 0;
    for (const SeamPart& part : side)
        for (const RunFact& run : facts.runs)
            if (run.edge == part.edge && facts.plan->finished[run.piece].piece.name == part.piece)
                off += run.off_mm;
    return off;
}

// What of a side's change both sides share is the runs' own; the rest is the seam's.
void leave_to_runs(DraftFacts& facts, const SeamSide& side, double share) {
    for (const SeamPart& part : side)
        for (RunFact& run : facts.runs)
            if (run.edge == part.edge && facts.plan->finished[run.piece].piece.name == part.piece)
                run.own_mm = nearer_to_zero(run.own_mm, std::abs(run.off_mm) * (1 - share));
}

bool has_part(const DraftFacts& facts, const SeamPart& part) {
    return std::any_of(facts.runs.begin(), facts.runs.end(), [&](const RunFact& run) {
        return run.found_mm && run.edge == part.edge &&
               facts.plan->finished[run.piece].piece.name == part.piece;
    });
}

double found_length(const DraftFacts& facts, const SeamSide& side) {
    double length = 0;
    for (const SeamPart& part : side)
        for (const RunFact& run : facts.runs)
            if (run.found_mm && run.edge == part.edge &&
                facts.plan->finished[run.piece].piece.name == part.piece)
                length += *run.found_mm;
    return length;
}

void share_out(DraftFacts& facts, SeamFact& fact) {
    const std::array<double, 2> off{off_of_side(facts, fact.seam->joins[0]),
                                    off_of_side(facts, fact.seam->joins[1])};
    fact.off_mm = off[1] - off[0];
    if (!facts.plan->asks(Criterion::seams)) return;
    const double common = off[0] * off[1] > 0 ? std::min(std::abs(off[0]), std::abs(off[1])) : 0;
    for (const std::size_t side : {0u, 1u})
        if (off[side] != 0) leave_to_runs(facts, fact.seam->joins[side], common / std::abs(off[side]));
}

}  // namespace

std::vector<RunFact> run_facts(const DraftFacts& facts) {
    std::vector<RunFact> runs;
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) {
        const auto& drawn = facts.draft.pieces[i];
        for (const Run& run : facts.plan->finished[i].runs) {
            RunFact fact{i, run.edge, run.length, {}, 0, 0};
            const Run* found = drawn ? find_run(drawn->shaped.runs, run.edge) : nullptr;
            if (found) fact.found_mm = found->length;
            if (found)
                fact.off_mm = nearer_to_zero(found->length - run.length, explained_by_darts(facts, fact));
            runs.push_back(fact);
        }
    }
    const std::vector<RunFact> before_corners = runs;
    for (RunFact& run : runs) {
        run.off_mm = nearer_to_zero(run.off_mm, explained_by_corners(facts, before_corners, run));
        run.own_mm = run.off_mm;
    }
    return runs;
}

std::vector<SeamFact> seam_facts(DraftFacts& facts) {
    std::vector<SeamFact> out;
    for (const Seam& seam : facts.plan->finished_pattern.seams) {
        SeamFact fact;
        fact.seam = &seam;
        fact.ease_mm = signed_ease(seam);
        for (const std::size_t side : {0u, 1u}) {
            fact.lengths_mm[side] = found_length(facts, seam.joins[side]);
            for (const SeamPart& part : seam.joins[side])
                fact.is_there = fact.is_there && has_part(facts, part);
        }
        fact.difference_mm = fact.lengths_mm[1] - fact.lengths_mm[0] - fact.ease_mm;
        if (fact.is_there) share_out(facts, fact);
        out.push_back(fact);
    }
    return out;
}

}  // namespace dartwright
