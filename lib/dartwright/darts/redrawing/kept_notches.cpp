#include "dartwright/darts/redrawing/kept_notches.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

RunEnd other_end(RunEnd end) {
    return end == RunEnd::start ? RunEnd::end : RunEnd::start;
}

// The end from which the run is walked in its first seam; in none, the one that did not move.
RunEnd walked_from(const Pattern& pattern, const Run& run, const RunGrown& grown) {
    for (const Seam& seam : pattern.seams) {
        for (const SeamSide& side : seam.joins) {
            for (const SeamPart& part : side) {
                const bool is_it = part.piece == pattern.pieces[grown.piece].name && part.edge == run.edge;
                if (is_it) return end_named(run, part.from).value_or(other_end(grown.at));
            }
        }
    }
    return other_end(grown.at);
}

void keep_notch(Notch& notch, const Run& run, const RunGrown& grown, RunEnd kept, Notes notes) {
    const auto from = end_named(run, notch.from);
    if (!from || *from == kept) return;
    const double at = notch.at + grown.by_mm;
    if (at >= 0) {
        notch.at = at;
        return;
    }
    notes.push_back("a notch of " + quoted(notch.edge) + " lay on the strip that was cut off, " +
                    measure_told(notch.at) + " from " + notch.from + "; mark it anew");
}

void keep_stretch(AllowanceStretch& stretch, const Run& run, const RunGrown& grown) {
    const double was = run.length - grown.by_mm;
    const bool is_from_moved = end_named(run, stretch.from) == grown.at;
    // A stretch that reached the end of the run still does.
    const auto kept = [&](double at) {
        if (is_from_moved) return at <= sum_rounding_mm ? at : at + grown.by_mm;
        return at >= was - sum_rounding_mm ? run.length : at;
    };
    stretch.at = std::clamp(kept(stretch.at), 0.0, run.length);
    stretch.to = std::clamp(kept(stretch.to), stretch.at, run.length);
}

}  // namespace

Pattern with_notches_kept(Pattern pattern, const RunGrown& grown, Notes notes) {
    if (grown.by_mm == 0) return pattern;
    Piece& piece = pattern.pieces[grown.piece];
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = run_named(runs, grown.edge, piece.name);
    const RunEnd kept = walked_from(pattern, run, grown);
    for (Notch& notch : piece.notches) {
        if (notch.edge == grown.edge) keep_notch(notch, run, grown, kept, notes);
    }
    for (auto& [edge, allowance] : piece.allowance) {
        auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance);
        if (!stretches || edge != grown.edge) continue;
        for (AllowanceStretch& each : *stretches) keep_stretch(each, run, grown);
    }
    return pattern;
}

}  // namespace dartwright
