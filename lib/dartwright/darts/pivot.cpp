#include "dartwright/darts/pivot.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/separating/centre_seam.hpp"
#include "dartwright/darts/turning/planned_turn.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

Made made_of(const PivotRequest& request, const PivotAccount& account) {
    Made made{"pivot", {{"piece", request.piece}, {"dart", request.dart}, {"to", request.to}}};
    const auto add = [&](const char* key, const std::string& value) { made.request.push_back({key, value}); };
    if (request.part.share) add("share", words_of_share(*request.part.share));
    if (request.part.angle_rad) add("angle", words_of_angle(*request.part.angle_rad));
    if (request.part.intake_mm) add("intake", words_of_length(*request.part.intake_mm));
    if (request.back_off_mm) add("back_off", words_of_length(*request.back_off_mm));
    if (!request.hold.empty()) add("hold", request.hold);
    if (account.new_dart != request.dart) add("name", account.new_dart);
    if (!request.press.empty()) add("press", request.press);
    if (!request.centre_seam.empty()) add("centre_seam", request.centre_seam);
    return made;
}

TurnWanted wanted_of(const PivotRequest& request, const AngleChosen& angle) {
    return {request.dart, request.to, angle, request.back_off_mm, request.hold, request.name, request.press};
}

void account_for(PivotAccount& account, const PivotRequest& request, const PlannedTurn& plan,
                 const Piece& turned) {
    const DartTurn& turn = plan.turn;
    account.piece = request.piece;
    account.dart = request.dart;
    account.new_dart = turn.opened.name;
    account.to = request.to;
    account.angle_rad = turn.angle.rad;
    account.angle_left_rad = turn.angle.is_all ? 0 : turn.figures.angle_rad - turn.angle.rad;
    const RunsOfParts parts = runs_of_parts(plan.cut, turn);
    account.turned = parts.turned;
    account.held = parts.held;
    account.turn_rad = angle(motion_of(turn));
    account.runs = run_changes(plan.runs, runs_of(turned.outline));
    account.old_intake_mm = turn.figures.intake;
    account.new_intake_mm = figures_of(turned.outline, *find_dart(turned, account.new_dart)).intake;
}

}  // namespace

PivotResult pivot(const Pattern& pattern, const PivotRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return pivot(without_spare_items(pattern), request);
    PivotResult result;
    Notes notes(result.account.notes, pattern.unit);
    const Tolerances tolerances = tolerances_of(pattern);
    result.pattern = with_centre_seam(pattern, {request.piece, request.centre_seam, {request.to}}, notes);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Piece before = prepared_piece(piece, dart, tolerances, notes);
    const DartFigures figures = movable_dart(before, dart, tolerances.legs_mm);
    const AngleChosen angle = angle_chosen(request.part, figures);
    const PlannedTurn plan = planned_turn(before, wanted_of(request, angle), notes);
    judge_cut(before, plan);
    piece = turned_piece(before, plan.cut, plan.turn, notes);
    refuse_overlap(piece.outline);
    if (plan.turn.angle.is_all) {
        warn_of_corner(before.outline, plan.turn.figures, {tolerances.mouth_deg}, notes);
    }
    account_for(result.account, request, plan, piece);
    result.pattern.made.push_back(made_of(request, result.account));
    return result;
}

}  // namespace dartwright
