#include "dartwright/darts/close_tuck.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/turning/pivot_choices.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

double stitched_length(const CloseTuckRequest& request, double leg_mm) {
    const double stitched = request.stitched_mm.value_or(leg_mm / 2);
    if (!(stitched >= least_span_mm)) {
        throw BadWords("the tuck is stitched over " + asked_told(stitched) + "; expected " +
                       least_told(least_span_mm, 0) + " or more");
    }
    if (stitched >= leg_mm) {
        throw Impossible("the tuck would be stitched over " + measure_told(stitched) + " of legs of " +
                             measure_told(leg_mm) + ", which is the whole dart",
                         "stitch less of it, or leave it a dart");
    }
    return stitched;
}

}  // namespace

CloseTuckResult close_as_tuck(const Pattern& pattern, const CloseTuckRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return close_as_tuck(without_spare_items(pattern), request);
    CloseTuckResult result{pattern, {}};
    CloseTuckAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Tolerances tolerances = tolerances_of(pattern);
    piece = prepared_piece(piece, dart, tolerances, {account.notes, pattern.unit});
    const DartFigures figures = movable_dart(piece, dart, tolerances.legs_mm);
    account.piece = request.piece;
    account.dart = request.dart;
    account.angle_rad = figures.angle_rad;
    account.intake_mm = figures.intake;
    account.leg_mm = std::min(figures.leg_a, figures.leg_b);
    account.stitched_mm = stitched_length(request, account.leg_mm);
    piece.outline.items[dart].as_dart()->stitched = account.stitched_mm;
    const PairOfPoints ends = stitching_ends(piece.outline, dart);
    account.released_mm = distance(ends.first, ends.second);
    const std::vector<Run> runs = runs_of(piece.outline);
    account.runs = run_changes(runs, runs);
    result.pattern.made.push_back({"close",
                                   {{"piece", request.piece},
                                    {"dart", request.dart},
                                    {"as", "tuck"},
                                    {"stitched", words_of_length(account.stitched_mm)}}});
    return result;
}

}  // namespace dartwright
