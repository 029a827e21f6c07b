#include "dartwright/darts/close_gathers.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/around_dart.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/darts/turning/pivot_choices.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

AroundDart around_inner_dart(const Piece& piece, std::size_t dart) {
    AroundDart around = around_dart(piece.outline, dart);
    if (is_in_one_run(around)) return around;
    throw Impossible(
        "the dart " + quoted(around.dart.name) + " stands in a corner, where there is no one edge to gather",
        "move it into an edge first");
}

// Of a neighbouring dart's mouth a stretch stays so far clear, mm: its notch must not stand in the mouth.
constexpr double clear_of_mouth_mm = 2;

// The span asked for, or as much of it as stays clear of the darts beside this one.
double span_clear_of_darts(const Piece& piece, std::size_t dart, const CloseGathersRequest& request,
                           Notes notes) {
    double span = request.span_mm;
    for (const Run& run : runs_of(piece.outline)) {
        const auto own = std::find(run.darts.begin(), run.darts.end(), dart);
        if (own == run.darts.end()) continue;
        const std::vector<double> at = dart_distances(piece.outline, run);
        const double here = at[std::size_t(own - run.darts.begin())];
        for (std::size_t k = 0; k < at.size(); ++k) {
            if (run.darts[k] != dart) span = std::min(span, std::abs(at[k] - here) - clear_of_mouth_mm);
        }
    }
    if (!(span > 0)) {
        throw Impossible(
            "another dart stands too near to " + quoted(request.dart) + " for a stretch between them",
            "merge the two, or move one of them away");
    }
    if (span < request.span_mm) {
        notes.push_back("the stretch is " + measure_told(span) +
                        " to each side, so that it stays clear of the next dart's mouth");
    }
    return span;
}

void refuse_gathered_already(const AroundDart& around, const CloseGathersRequest& request, double span_mm) {
    const auto refuse_along = [&](auto item, auto end) {
        double walked = 0;
        for (; item != end && walked < span_mm; ++item) {
            const EdgeItem* edge = item->item.as_edge();
            if (!edge || edge->edge != around.chain.front().item.as_edge()->edge) return;
            if (edge->fullness > 0) {
                throw Impossible("the stretch would run into cloth that is gathered or eased already, " +
                                     measure_told(walked) + " from " + quoted(request.dart),
                                 "take a shorter span");
            }
            for (const Curve& curve : curves_of(*edge, item->start, item->item.to)) walked += length(curve);
        }
    };
    refuse_along(around.chain.begin(), around.chain.end());
    refuse_along(around.chain.rbegin(), around.chain.rend());
}

Outline gathered_outline(const AroundDart& around, const CloseGathersRequest& request, double span_mm,
                         CloseGathersAccount& account) {
    refuse_gathered_already(around, request, span_mm);
    Bridged bridged = bridged_over(around.chain, span_mm);
    account.sewn_mm = bridged.sewn_mm;
    account.fullness_mm = bridged.length_mm - bridged.sewn_mm;
    if (!(account.fullness_mm > 0)) {
        throw Impossible("a smooth line over the mouth of " + quoted(request.dart) +
                             " is no longer than the edge, so that nothing is left to take in",
                         "take a longer span");
    }
    bridged.chain.front().item.as_edge()->fullness = account.fullness_mm;
    return outline_of(std::move(bridged.chain));
}

// Where the stretch lies in its run: the item with the dart's fullness, by sewn distances.
void place_stretch(const Outline& outline, const Run& run, CloseGathersAccount& account) {
    const std::vector<double> at = item_distances(outline, run);
    for (std::size_t k = 0; k < run.items.size(); ++k) {
        const EdgeItem& item = *outline.items[run.items[k]].as_edge();
        if (item.fullness != account.fullness_mm) continue;
        account.from_mm = at[k];
        account.to_mm = at[k] + account.sewn_mm;
    }
}

// A notch nearer to a corner than this is the corner, mm: less cannot be sewn to.
constexpr double notch_at_corner_mm = 1;

void add_notches(Piece& piece, const Run& run, RunEnd from, std::vector<double> at) {
    for (const double distance : at) {
        if (distance < notch_at_corner_mm || distance > run.length - notch_at_corner_mm) continue;
        piece.notches.push_back({run.edge, name_of_end(run, from), distance, NotchKind::single});
    }
}

// A stretch of an edge, by sewn distances from its run's start.
struct Stretch {
    std::string piece;
    std::string edge;
    double from_mm = 0;
    double to_mm = 0;
    RunEnd walked_from = RunEnd::start;  ///< where its notches are measured from
};

// The stretch that lies opposite on the seam's other side; empty if a side has several parts or both are one
// edge.
std::optional<Stretch> opposite(const Pattern& pattern, const Seam& seam, int side, const Stretch& stretch) {
    const SeamSide& own = seam.joins[std::size_t(side)];
    const SeamSide& other = seam.joins[std::size_t(1 - side)];
    if (own.size() != 1 || other.size() != 1) return std::nullopt;
    const auto own_runs = runs_of(piece_named(pattern, own[0].piece).outline);
    const Run& own_run = run_named(own_runs, own[0].edge, own[0].piece);
    const auto runs = runs_of(piece_named(pattern, other[0].piece).outline);
    const Run& run = run_named(runs, other[0].edge, other[0].piece);
    const bool is_forward = end_named(own_run, own[0].from) == RunEnd::start;
    const double from = is_forward ? stretch.from_mm : own_run.length - stretch.to_mm;
    const double to = is_forward ? stretch.to_mm : own_run.length - stretch.from_mm;
    const bool is_from_start = end_named(run, other[0].from).value_or(RunEnd::start) == RunEnd::start;
    if (is_from_start) return Stretch{other[0].piece, other[0].edge, from, to, RunEnd::start};
    return Stretch{other[0].piece, other[0].edge, run.length - to, run.length - from, RunEnd::end};
}

void notch_stretch(Piece& piece, const Run& run, const Stretch& stretch) {
    const bool is_from_start = stretch.walked_from == RunEnd::start;
    const double from = is_from_start ? stretch.from_mm : run.length - stretch.to_mm;
    const double to = is_from_start ? stretch.to_mm : run.length - stretch.from_mm;
    add_notches(piece, run, stretch.walked_from, {from, to});
}

// Notches the stretch on every edge that is sewn to it, and on what those are sewn to: a notch on one edge
// asks for one on each of its seams' other sides.
void notch_seams(Pattern& pattern, const CloseGathersAccount& account, Notes notes) {
    std::set<std::pair<std::string, std::string>> seen{{account.piece, account.edge}};
    std::vector<Stretch> waiting{{account.piece, account.edge, account.from_mm, account.to_mm}};
    while (!waiting.empty()) {
        const Stretch stretch = waiting.back();
        waiting.pop_back();
        for (const Seam& seam : pattern.seams) {
            for (int side = 0; side < 2; ++side) {
                const SeamSide& own = seam.joins[std::size_t(side)];
                const bool is_of_seam = std::any_of(own.begin(), own.end(), [&](const SeamPart& part) {
                    return part.piece == stretch.piece && part.edge == stretch.edge;
                });
                if (!is_of_seam) continue;
                const auto there = opposite(pattern, seam, side, stretch);
                if (!there) {
                    notes.push_back("the seam " + quoted(seam.name) +
                                    " has a side of several parts; mark the stretch on it by hand");
                    continue;
                }
                if (!seen.insert({there->piece, there->edge}).second) continue;
                Piece& piece = pattern.pieces[piece_index(pattern, there->piece)];
                const auto runs = runs_of(piece.outline);
                notch_stretch(piece, run_named(runs, there->edge, piece.name), *there);
                notes.push_back("the stretch is notched on " + quoted(there->edge) + " of " +
                                quoted(piece.name) + " as well");
                waiting.push_back(*there);
            }
        }
    }
}

void note_too_much_ease(const CloseGathersRequest& request, CloseGathersAccount& account) {
    const double share = account.fullness_mm / account.sewn_mm;
    if (request.as != TakenIn::ease || share <= most_ease) return;
    account.notes.push_back(text_of("%.0f %% of the stretch", share * 100) +
                            " is more than most cloth can be eased by; gather it, or take a longer span");
}

}  // namespace

CloseGathersResult close_as_gathers(const Pattern& pattern, const CloseGathersRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return close_as_gathers(without_spare_items(pattern), request);
    require_span(request.span_mm, SpanMayBe::wide);
    CloseGathersResult result{pattern, {}};
    CloseGathersAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Tolerances tolerances = tolerances_of(pattern);
    piece = prepared_piece(piece, dart, tolerances, {account.notes, pattern.unit});
    const DartFigures figures = movable_dart(piece, dart, tolerances.legs_mm);
    const std::vector<Run> before = runs_of(piece.outline);
    const AroundDart around = around_inner_dart(piece, dart);
    account.piece = request.piece;
    account.dart = request.dart;
    account.edge = around.chain.front().item.as_edge()->edge;
    account.intake_mm = figures.intake;
    account.angle_rad = figures.angle_rad;
    const double span = span_clear_of_darts(piece, dart, request, {account.notes, pattern.unit});
    piece.outline = gathered_outline(around, request, span, account);
    refuse_bad_redrawing(piece.outline);
    const std::vector<Run> after = runs_of(piece.outline);
    const Run& run = run_named(after, account.edge, request.piece);
    place_stretch(piece.outline, run, account);
    account.has_from_notch = account.from_mm >= notch_at_corner_mm;
    account.has_to_notch = account.to_mm <= run.length - notch_at_corner_mm;
    add_notches(piece, run, RunEnd::start, {account.from_mm, account.to_mm});
    note_too_much_ease(request, account);
    notch_seams(result.pattern, account, {account.notes, pattern.unit});
    account.runs = run_changes(before, after);
    result.pattern.made.push_back({"close",
                                   {{"piece", request.piece},
                                    {"dart", request.dart},
                                    {"as", request.as == TakenIn::ease ? "ease" : "gathers"},
                                    {"span", words_of_length(request.span_mm)}}});
    return result;
}

}  // namespace dartwright
