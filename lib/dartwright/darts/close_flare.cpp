#include "dartwright/darts/close_flare.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/around_dart.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

PivotResult opened_in_hem(Pattern pattern, const CloseFlareRequest& request) {
    // A slash that is left open is not pressed to any side.
    Piece& piece = pattern.pieces[piece_index(pattern, request.piece)];
    piece.outline.items[dart_named(piece, request.dart)].as_dart()->press.clear();
    PivotRequest whole;
    whole.piece = request.piece;
    whole.dart = request.dart;
    whole.to = request.to;
    whole.hold = request.hold;
    whole.back_off_mm = 0;
    return pivot(pattern, whole);
}

AroundDart around_slash(const Piece& piece, const std::string& dart) {
    AroundDart around = around_dart(piece.outline, *find_dart(piece, dart));
    if (is_in_one_run(around)) return around;
    throw Impossible("the slash ends in a corner, where there is no one hem to draw smooth",
                     "take a place inside the hem");
}

double length_of_run(const std::vector<RunChange>& runs, const std::string& edge, bool is_after) {
    for (const RunChange& run : runs) {
        if (run.edge == edge) return is_after ? run.after_mm : run.before_mm;
    }
    return 0;
}

}  // namespace

CloseFlareResult close_as_flare(const Pattern& pattern, const CloseFlareRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return close_as_flare(without_spare_items(pattern), request);
    require_span(request.span_mm, SpanMayBe::wide);
    PivotResult opened = opened_in_hem(pattern, request);
    CloseFlareResult result{std::move(opened.pattern), {}};
    CloseFlareAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(result.pattern, request.piece)];
    const AroundDart around = around_slash(piece, opened.account.new_dart);
    account.piece = request.piece;
    account.dart = request.dart;
    account.to = request.to;
    account.hem = around.chain.front().item.as_edge()->edge;
    account.angle_rad = opened.account.angle_rad;
    account.opening_mm = opened.account.new_intake_mm;
    account.notes = opened.account.notes;
    piece.outline = outline_of(bridged_over(around.chain, request.span_mm).chain);
    refuse_bad_redrawing(piece.outline);
    account.runs = run_changes(runs_of(piece_named(pattern, request.piece).outline), runs_of(piece.outline));
    account.added_mm =
        length_of_run(account.runs, account.hem, true) - length_of_run(account.runs, account.hem, false);
    note_seams_of_changed_runs(pattern, request.piece, account.runs, {account.notes, pattern.unit});
    Made made{"close",
              {{"piece", request.piece},
               {"dart", request.dart},
               {"as", "flare"},
               {"to", request.to},
               {"span", words_of_length(request.span_mm)}}};
    if (!request.hold.empty()) made.request.push_back({"hold", request.hold});
    result.pattern.made.back() = made;
    return result;
}

}  // namespace dartwright
