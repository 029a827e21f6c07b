#include "dartwright/assessing/matched_draft.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "dartwright/assessing/ladder.hpp"
#include "dartwright/assessing/renamed_piece.hpp"
#include "dartwright/assessing/run_matching.hpp"
#include "dartwright/comparing/rigid_parts.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

/// Between pieces of nearly one shape the piece's name decides.
constexpr double piece_name_weight = 0.1;

/// A way round is another one's better only if edges and darts stray by so much less, mm: a slip of the hand
/// does not turn a piece over that is nearly its own mirror image. Darts tell such a piece from its image,
/// and no other: they may stand anywhere.
constexpr double clearly_less_mm = 0.5;
constexpr double most_by_darts_mm = 5;

/// A piece that fits worse than this with its edges put together was not the exercise's with a wrong name,
/// but another one.
constexpr double worst_mended = 0.15;

double misfit_with(const ExercisePlan& plan, const std::vector<RunSignature>& runs) {
    double least = worst_mended;
    for (const std::vector<RunSignature>& expected : plan.signatures)
        if (expected.size() == runs.size())
            least = std::min(least, matched_runs(expected, runs).front().misfit);
    return least;
}

bool is_edge_of_any(const ExercisePlan& plan, const std::string& edge) {
    return std::any_of(plan.finished.begin(), plan.finished.end(),
                       [&](const ShapedPiece& each) { return find_run(each.runs, edge) != nullptr; });
}

DraftedPiece with_run_renamed(const DraftedPiece& drawn, const std::string& run, const std::string& edge) {
    DraftedPiece out = drawn;
    out.renamed.push_back(quoted(run) + " is part of " + quoted(edge));
    out.shaped.piece = with_edges_renamed(out.shaped.piece, {{run, edge}});
    std::erase_if(out.shaped.piece.notches, [](const Notch& each) { return each.edge == each.from; });
    out.shaped.runs = runs_of(out.shaped.piece.outline);
    out.runs = signatures_of(out.shaped);
    return out;
}

// One part of an edge that was misspelt makes another edge of it, and of the piece one that has an edge too
// many: it is put to the edge beside it where that makes the exercise's piece of it.
DraftedPiece with_edge_whole(const ExercisePlan& plan, DraftedPiece drawn) {
    const bool has_as_many =
        std::any_of(plan.signatures.begin(), plan.signatures.end(),
                    [&](const std::vector<RunSignature>& each) { return each.size() == drawn.runs.size(); });
    if (misfit_with(plan, drawn.runs) < worst_mended && has_as_many) return drawn;
    double least = worst_mended;
    DraftedPiece best = drawn;
    for (const Run& run : drawn.shaped.runs) {
        if (is_edge_of_any(plan, run.edge)) continue;
        for (const std::string& beside : {run.before, run.after}) {
            if (beside.empty() || beside == run.edge) continue;
            DraftedPiece other = with_run_renamed(drawn, run.edge, beside);
            const double misfit = misfit_with(plan, other.runs);
            if (misfit >= least) continue;
            least = misfit;
            best = std::move(other);
        }
    }
    return best;
}

struct PiecePair {
    std::size_t expected = 0;
    std::size_t drawn = 0;
    std::vector<RunMatching> ways;
    double misfit = 0;
};

// A piece that has all the edges of another, and more, is not that one as long as any piece is it better.
double misfit_and_surplus(const PiecePair& pair) {
    return pair.misfit + pair.ways.front().surplus;
}

// The pairs that fit best first, each piece once.
std::vector<PiecePair> best_pairs(std::vector<PiecePair> all) {
    std::stable_sort(all.begin(), all.end(), [](const PiecePair& a, const PiecePair& b) {
        return misfit_and_surplus(a) < misfit_and_surplus(b);
    });
    std::vector<PiecePair> out;
    for (PiecePair& pair : all) {
        const bool is_taken = std::any_of(out.begin(), out.end(), [&](const PiecePair& each) {
            return each.expected == pair.expected || each.drawn == pair.drawn;
        });
        if (!is_taken && pair.misfit < worst_misfit) out.push_back(std::move(pair));
    }
    return out;
}

std::vector<PiecePair> paired_pieces(const ExercisePlan& plan, const std::vector<DraftedPiece>& drawn) {
    std::vector<PiecePair> all;
    for (std::size_t i = 0; i < plan.finished.size(); ++i) {
        for (std::size_t k = 0; k < drawn.size(); ++k) {
            PiecePair pair{i, k, matched_runs(plan.signatures[i], drawn[k].runs), 0};
            const bool is_named = plan.finished[i].piece.name == drawn[k].shaped.piece.name;
            pair.misfit = pair.ways.front().misfit + (is_named ? 0 : piece_name_weight);
            all.push_back(std::move(pair));
        }
    }
    return best_pairs(std::move(all));
}

struct RunLengths {
    double expected = 0;
    double drawn = 0;
    double ratio() const { return drawn / expected; }
};
// The ratio with as much of the length on either side of it: an edge out of true does not move it.
double middle_ratio(std::vector<RunLengths> runs) {
    std::sort(runs.begin(), runs.end(),
              [](const RunLengths& a, const RunLengths& b) { return a.ratio() < b.ratio(); });
    double all = 0;
    for (const RunLengths& each : runs) all += each.expected;
    double sum = 0;
    for (const RunLengths& each : runs) {
        sum += each.expected;
        if (sum >= all / 2) return each.ratio();
    }
    return 1;
}

// By how much all lengths together are off at that scale, mm.
double off_at(const std::vector<RunLengths>& runs, double scale) {
    double sum = 0;
    for (const RunLengths& each : runs) sum += std::abs(each.drawn / scale - each.expected);
    return sum;
}

/// A print out of scale by more than this is none: it is another unit, or its own mistake.
constexpr double most_print_error = 0.2;
/// A scale that leaves more than this of what all lengths together are off explains nothing: edges out of
/// true do not make a print out of scale.
constexpr double most_unexplained = 0.5;

// A mistaken unit is seen from afar; a print out of scale only if that explains the lengths, and if it is
// more than the first rung allows on the longest.
DraftScale scale_of(const ExercisePlan& plan, const std::vector<RunLengths>& runs) {
    const double ratio = middle_ratio(runs);
    DraftScale out{ratio, nearest_unit(ratio), false};
    if (std::abs(ratio / out.unit - 1) > most_print_error) out.unit = 1;
    const bool is_small = !is_off(plan.exercise.ladders.lengths, (ratio / out.unit - 1) * plan.longest_mm);
    const bool is_explaining = off_at(runs, ratio) <= most_unexplained * off_at(runs, out.unit);
    if (is_small || !is_explaining) out.drawn = out.unit;
    out.is_off = out.drawn != 1;
    return out;
}

DraftScale scale_of(const ExercisePlan& plan, const std::vector<DraftedPiece>& drawn,
                    const std::vector<PiecePair>& pairs) {
    std::vector<RunLengths> runs;
    for (const PiecePair& pair : pairs) {
        const std::vector<Run>& expected = plan.finished[pair.expected].runs;
        for (std::size_t i = 0; i < expected.size(); ++i) {
            const auto& run = pair.ways.front().drawn[i];
            if (!run || !(expected[i].length > 0)) continue;
            const double length = drawn[pair.drawn].shaped.runs[*run].length;
            if (length > 0) runs.push_back({expected[i].length, length});
        }
    }
    return scale_of(plan, runs);
}

// Where darts stand around a piece: those that are expected, and those that were there before.
std::vector<double> known_darts(const ExercisePlan& plan, std::size_t piece) {
    std::vector<double> around;
    for (const AskedDart& dart : plan.darts)
        if (dart.piece == piece) around.push_back(dart.dart.around_mm);
    for (const AskedClosed& dart : plan.closed)
        if (dart.piece == piece) around.push_back(dart.around_mm);
    return around;
}

// How far edges stray from a known piece's on the whole, and darts from where one is known, mm.
struct Strayed {
    double edges = 0;
    double darts = 0;
};
Strayed strayed(const ShapedPiece& expected, const std::vector<double>& darts, const ShapedPiece& drawn) {
    const double all_round = sewn_around(expected);
    Strayed out;
    for (const ComparedPart& part : rigid_parts({expected, drawn}).parts)
        out.edges += part.strays_mm * part.length_mm / all_round;
    for (const StandingDart& dart : standing_darts(drawn, edges_of(expected))) {
        double least = all_round / 2;
        for (const double known : darts)
            least = std::min(least, std::abs(std::remainder(dart.around_mm - known, all_round)));
        out.darts += least;
    }
    return out;
}
double whole_of(const Strayed& strayed) {
    return strayed.edges + std::min(strayed.darts, most_by_darts_mm);
}

// The darts where the piece has them.
Strayed strayed_as_it_was(const ShapedPiece& known, const ShapedPiece& drawn) {
    std::vector<double> darts;
    for (const StandingDart& dart : standing_darts(known, edges_of(known))) darts.push_back(dart.around_mm);
    return strayed(known, darts, drawn);
}

// From the finished piece, or from the one to begin with: what was not done is turned over by nobody.
Strayed strayed(const ExercisePlan& plan, std::size_t piece, const ShapedPiece& drawn) {
    const Strayed from_finished = strayed(plan.finished[piece], known_darts(plan, piece), drawn);
    const Strayed from_start = strayed_as_it_was(plan.reference[piece], drawn);
    return whole_of(from_start) < whole_of(from_finished) ? from_start : from_finished;
}
bool is_clearly_less(const Strayed& a, const Strayed& b) {
    return whole_of(a) + clearly_less_mm < whole_of(b);
}

// The way round as the known piece, told in the other's edges: of those that it has not there is none.
RunMatching in_edges_of(const ShapedPiece& expected, const KnownAs& as) {
    RunMatching out{as.runs.is_mirrored, {}, as.runs.misfit};
    for (const Run& run : expected.runs) {
        const Run* same = find_run(as.known.runs, run.edge);
        out.drawn.emplace_back();
        if (same) out.drawn.back() = as.runs.drawn[static_cast<std::size_t>(same - as.known.runs.data())];
    }
    return out;
}

// A piece that was not yet divided or opened has other edges than the finished one, and names alone do not
// tell which side of it is up: what the piece was before tells that.
RunMatching way_as_before(const ExercisePlan& plan, const DraftedPiece& drawn, const PiecePair& pair,
                          double scale) {
    const ShapedPiece& expected = plan.finished[pair.expected];
    RunMatching best = pair.ways.front();
    std::optional<Strayed> least;
    for (const bool is_mirrored : {false, true}) {
        for (const ShapedPiece& known : plan.known) {
            if (known.runs.size() != drawn.runs.size()) continue;
            for (const RunMatching& way : matched_runs(signatures_of(known), drawn.runs)) {
                if (way.is_mirrored != is_mirrored || !(way.misfit < worst_mended)) continue;
                const KnownAs as{known, way};
                const Strayed here = strayed_as_it_was(known, matched_piece(drawn, as, scale).shaped);
                if (least && !is_clearly_less(here, *least)) continue;
                least = here;
                best = in_edges_of(expected, as);
            }
        }
    }
    return best;
}

// Where several ways round fit nearly as well, as with two edges or a piece that is its own mirror image, the
// whole shape decides; between equals the first.
template <class StrayedOf>
MatchedPiece nearest_way(const DraftedPiece& drawn, const ShapedPiece& known,
                         const std::vector<RunMatching>& ways, double scale, const StrayedOf& strayed_of) {
    MatchedPiece best = matched_piece(drawn, {known, ways.front()}, scale);
    Strayed least;
    if (ways.size() > 1) least = strayed_of(best.shaped);
    for (std::size_t i = 1; i < ways.size(); ++i) {
        MatchedPiece other = matched_piece(drawn, {known, ways[i]}, scale);
        const Strayed there = strayed_of(other.shaped);
        if (!is_clearly_less(there, least)) continue;
        least = there;
        best = std::move(other);
    }
    return best;
}

MatchedPiece best_matched(const ExercisePlan& plan, const DraftedPiece& drawn, const PiecePair& pair,
                          double scale) {
    const ShapedPiece& expected = plan.finished[pair.expected];
    std::vector<RunMatching> ways = pair.ways;
    if (expected.runs.size() != drawn.runs.size()) ways = {way_as_before(plan, drawn, pair, scale)};
    MatchedPiece best = nearest_way(drawn, expected, ways, scale, [&](const ShapedPiece& piece) {
        return strayed(plan, pair.expected, piece);
    });
    best.drawn = pair.drawn;
    return best;
}

}  // namespace

MatchedPiece matched_as(const ShapedPiece& known, const std::vector<RunMatching>& ways,
                        const DraftedPiece& drawn, double scale) {
    return nearest_way(drawn, known, ways, scale,
                       [&](const ShapedPiece& piece) { return strayed_as_it_was(known, piece); });
}

Point MatchedDraft::as_drawn(std::size_t piece, Point p) const {
    const Point q{scale.drawn * p.x, scale.drawn * p.y};
    return pieces[piece] && pieces[piece]->is_mirrored ? mirrored(MirrorLine{}, q) : q;
}

MatchedDraft matched_draft(const ExercisePlan& plan, const Pattern& draft) {
    std::vector<DraftedPiece> drawn;
    for (const Piece& piece : draft.pieces) {
        if (piece.outline.items.empty()) throw std::invalid_argument(quoted(piece.name) + " has no outline");
        drawn.push_back(with_edge_whole(plan, drafted_piece(piece)));
    }
    if (drawn.empty()) throw std::invalid_argument("there is no piece in it");
    std::vector<PiecePair> pairs = paired_pieces(plan, drawn);
    MatchedDraft out;
    out.scale = scale_of(plan, drawn, pairs);
    out.pieces.resize(plan.finished.size());
    out.whose = whose(plan, drawn, out.scale.drawn);
    if (out.whose.is_strangers) pairs.clear();
    std::vector<bool> is_matched(drawn.size());
    for (const PiecePair& pair : pairs) {
        is_matched[pair.drawn] = true;
        out.pieces[pair.expected] = best_matched(plan, drawn[pair.drawn], pair, out.scale.drawn);
    }
    for (std::size_t k = 0; k < drawn.size(); ++k)
        if (!is_matched[k]) out.extra_pieces.push_back(drawn[k].shaped.piece.name);
    out.drawn = std::move(drawn);
    return out;
}

}  // namespace dartwright
