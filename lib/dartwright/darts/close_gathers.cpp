#include "dartwright/darts/close_gathers.hpp"

#include "dartwright/darts/around_dart.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/pivot_choices.hpp"
#include "dartwright/darts/prepared_piece.hpp"
#include "dartwright/darts/redrawn_edge.hpp"
#include "dartwright/darts/request_words.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

AroundDart around_inner_dart(const Piece& piece, std::size_t dart) {
    AroundDart around = around_dart(piece.outline, dart);
    if (is_in_one_run(around)) return around;
    throw Impossible(
        "the dart " + quoted(around.dart.name) + " stands in a corner, where there is no one edge to gather",
        "move it into an edge first");
}

Outline gathered_outline(const AroundDart& around, const CloseGathersRequest& request,
                         CloseGathersAccount& account) {
    Bridged bridged = bridged_over(around.chain, request.span_mm);
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

// The stretch on the side that the edge is sewn to, walked from the seam's beginning.
void notch_other_side(Pattern& pattern, const Seam& seam, int side, const CloseGathersAccount& account,
                      std::vector<std::string>& notes) {
    const SeamSide& own = seam.joins[std::size_t(side)];
    const SeamSide& other = seam.joins[std::size_t(1 - side)];
    if (other.size() == 1 && other[0].piece == account.piece && other[0].edge == account.edge) return;
    if (own.size() != 1 || other.size() != 1) {
        notes.push_back("the seam " + quoted(seam.name) +
                        " has a side of several parts; mark the stretch on it by hand");
        return;
    }
    const std::vector<Run> own_runs = runs_of(piece_named(pattern, account.piece).outline);
    const Run& own_run = run_named(own_runs, account.edge, account.piece);
    const bool is_forward = end_named(own_run, own[0].from) == RunEnd::start;
    Piece& piece = pattern.pieces[piece_index(pattern, other[0].piece)];
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = run_named(runs, other[0].edge, piece.name);
    const double from = is_forward ? account.from_mm : own_run.length - account.to_mm;
    const double to = is_forward ? account.to_mm : own_run.length - account.from_mm;
    add_notches(piece, run, end_named(run, other[0].from).value_or(RunEnd::start), {from, to});
    notes.push_back("the stretch is notched on " + quoted(other[0].edge) + " of " + quoted(piece.name) +
                    " as well");
}

void notch_seams(Pattern& pattern, const CloseGathersAccount& account, std::vector<std::string>& notes) {
    for (const Seam& seam : std::vector<Seam>(pattern.seams)) {
        for (int side = 0; side < 2; ++side) {
            for (const SeamPart& part : seam.joins[std::size_t(side)]) {
                if (part.piece != account.piece || part.edge != account.edge || part.mirrored) continue;
                notch_other_side(pattern, seam, side, account, notes);
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
    if (!(request.span_mm > 0)) {
        throw BadWords("the span is " + text_of("%g mm", request.span_mm) + "; expected more than 0");
    }
    CloseGathersResult result{pattern, {}};
    CloseGathersAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Tolerances tolerances = tolerances_of(pattern);
    piece = prepared_piece(piece, dart, tolerances, account.notes);
    const DartFigures figures = movable_dart(piece, dart, tolerances.legs_mm);
    const std::vector<Run> before = runs_of(piece.outline);
    const AroundDart around = around_inner_dart(piece, dart);
    account.piece = request.piece;
    account.dart = request.dart;
    account.edge = around.chain.front().item.as_edge()->edge;
    account.intake_mm = figures.intake;
    account.angle_rad = figures.angle_rad;
    piece.outline = gathered_outline(around, request, account);
    refuse_bad_redrawing(piece.outline);
    const std::vector<Run> after = runs_of(piece.outline);
    const Run& run = run_named(after, account.edge, request.piece);
    place_stretch(piece.outline, run, account);
    add_notches(piece, run, RunEnd::start, {account.from_mm, account.to_mm});
    note_too_much_ease(request, account);
    notch_seams(result.pattern, account, account.notes);
    account.runs = run_changes(before, after);
    result.pattern.made.push_back({"close",
                                   {{"piece", request.piece},
                                    {"dart", request.dart},
                                    {"as", request.as == TakenIn::ease ? "ease" : "gathers"},
                                    {"span", words_of_length(request.span_mm)}}});
    return result;
}

}  // namespace dartwright
