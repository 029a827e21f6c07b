#include "dartwright/darts/merge.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/turning/dart_turn.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

struct BothDarts {
    std::size_t dart = 0;
    std::size_t with = 0;
    DartFigures figures;
    DartFigures with_figures;
};

BothDarts both_darts(const Piece& piece, const MergeRequest& request, double legs_mm) {
    BothDarts both;
    both.dart = dart_named(piece, request.dart);
    both.with = dart_named(piece, request.with);
    if (both.dart == both.with) {
        throw BadWords("the dart " + quoted(request.dart) + " is to be merged with itself; expected another");
    }
    both.figures = movable_dart(piece, both.dart, legs_mm);
    both.with_figures = movable_dart(piece, both.with, legs_mm);
    return both;
}

NewDart widened_dart(const Piece& piece, const MergeRequest& request, const BothDarts& both) {
    const DartItem& with = *piece.outline.items[both.with].as_dart();
    if (request.name.empty() || request.name == with.name) {
        return {with.name, with.press, both.with_figures.back_off};
    }
    return {name_chosen(piece, both.dart, {request.name, "", true}), with.press, both.with_figures.back_off};
}

DartTurn planned_merge(const Piece& piece, const TargetCut& cut, const MergeRequest& request,
                       const BothDarts& both) {
    DartTurn turn;
    turn.dart = *piece.outline.items[both.dart].as_dart();
    turn.figures = both.figures;
    turn.angle = {both.figures.angle_rad, true};
    turn.is_after_held = is_after_dart_held(piece, cut, request.hold);
    turn.opened = widened_dart(piece, request, both);
    return turn;
}

void account_for(MergeAccount& account, const MergeRequest& request, const BothDarts& both) {
    account.piece = request.piece;
    account.dart = request.dart;
    account.with = request.with;
    account.angle_rad = both.figures.angle_rad;
    account.angle_with_rad = both.with_figures.angle_rad;
    account.old_intake_mm = both.with_figures.intake;
}

// Of the one that closes and of the one that opens.
void note_curved_legs(const Piece& piece, const BothDarts& both, Notes notes) {
    for (const std::size_t item : {both.dart, both.with}) {
        const DartItem& dart = *piece.outline.items[item].as_dart();
        if (dart.legs) notes.push_back("the curved legs of " + quoted(dart.name) + " are drawn straight");
    }
}

Made made_of(const MergeRequest& request) {
    Made made{"merge", {{"piece", request.piece}, {"dart", request.dart}, {"with", request.with}}};
    if (!request.hold.empty()) made.request.push_back({"hold", request.hold});
    if (!request.name.empty()) made.request.push_back({"name", request.name});
    return made;
}

}  // namespace

MergeResult merge(const Pattern& pattern, const MergeRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return merge(without_spare_items(pattern), request);
    MergeResult result{pattern, {}};
    MergeAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    dart_named(piece, request.with);
    const Piece before =
        prepared_piece(piece, dart_named(piece, request.dart), tolerances, {account.notes, pattern.unit});
    const BothDarts both = both_darts(before, request, tolerances.legs_mm);
    const TargetCut cut =
        cut_between_darts(before.outline, both.dart, both.with, "no one turn closes the one into the other");
    const DartTurn turn = planned_merge(before, cut, request, both);
    account_for(account, request, both);
    note_curved_legs(before, both, {account.notes, pattern.unit});
    piece = turned_piece(before, cut, turn, {account.notes, pattern.unit});
    refuse_overlap(piece.outline);
    warn_of_corner(before.outline, both.figures, {tolerances.mouth_deg}, {account.notes, pattern.unit});
    const RunsOfParts parts = runs_of_parts(cut, turn);
    account.turned = parts.turned;
    account.held = parts.held;
    account.turn_rad = angle(motion_of(turn));
    account.name = turn.opened.name;
    account.new_intake_mm = figures_of(piece.outline, *find_dart(piece, account.name)).intake;
    account.runs = run_changes(runs_of(before.outline), runs_of(piece.outline));
    result.pattern.made.push_back(made_of(request));
    return result;
}

}  // namespace dartwright
