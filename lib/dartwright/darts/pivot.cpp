#include "dartwright/darts/pivot.hpp"

#include "dartwright/darts/dart_turn.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/pivot_choices.hpp"
#include "dartwright/darts/prepared_piece.hpp"
#include "dartwright/darts/target_cut.hpp"

namespace dartwright {
namespace {

Made made_of(const PivotRequest& request, const PivotAccount& account) {
    Made made{"pivot", {{"piece", request.piece}, {"dart", request.dart}, {"to", request.to}}};
    const auto add = [&](const char* key, const std::string& value) { made.request.push_back({key, value}); };
    if (request.part.share) add("share", text_of("%.17g%%", *request.part.share * 100));
    if (request.part.angle_rad) add("angle", text_of("%.17g", degrees(*request.part.angle_rad)));
    if (request.part.intake_mm) add("intake", text_of("%.17gmm", *request.part.intake_mm));
    if (request.back_off_mm) add("back_off", text_of("%.17gmm", *request.back_off_mm));
    if (!request.hold.empty()) add("hold", request.hold);
    if (account.new_dart != request.dart) add("name", account.new_dart);
    if (!request.press.empty()) add("press", request.press);
    return made;
}

// Everything that is decided before the part turns.
struct PlannedPivot {
    std::vector<Run> runs;
    TargetCut cut;
    DartTurn turn;
};

void choose_new_dart(PlannedPivot& plan, const Piece& piece, const PivotRequest& request,
                     const TargetChosen& target, std::vector<std::string>& notes) {
    const Vector axis = start_of_item(plan.cut.outline, plan.cut.target) - plan.turn.figures.pivot;
    plan.turn.opened.back_off = back_off_chosen(request.back_off_mm, plan.turn.figures, norm(axis));
    const bool is_corner = target.at_start || target.at_end;
    const PressChosen press = press_chosen(
        piece, plan.runs,
        {request.press.empty() ? plan.turn.dart.press : request.press, is_corner ? "" : target.edge, axis});
    plan.turn.opened.press = press.edge;
    if (!press.note.empty()) notes.push_back(press.note);
    if (plan.turn.dart.legs) notes.push_back("the curved legs are drawn straight");
}

PlannedPivot planned(const Piece& piece, std::size_t dart, const PivotRequest& request,
                     const Tolerances& tolerances, std::vector<std::string>& notes) {
    PlannedPivot plan;
    plan.runs = runs_of(piece.outline);
    plan.turn.dart = *piece.outline.items[dart].as_dart();
    plan.turn.figures = movable_dart(piece, dart, tolerances.legs_mm);
    plan.turn.angle = angle_chosen(request.part, plan.turn.figures);
    const TargetChosen target = target_chosen(piece, plan.runs, request.to);
    plan.turn.opened.name = name_chosen(piece, dart, {request.name, target.edge, plan.turn.angle.is_all});
    plan.cut = cut_at_target(piece.outline, target, request.dart);
    const std::string trouble = trouble_with(plan.cut.polygon, plan.cut.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    refuse_blocked_cut(piece, plan.cut, target);
    plan.turn.is_after_held = is_after_dart_held(piece, plan.cut, request.hold);
    choose_new_dart(plan, piece, request, target, notes);
    return plan;
}

void account_for(PivotAccount& account, const PivotRequest& request, const PlannedPivot& plan,
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
    PivotResult result{pattern, {}};
    std::vector<std::string>& notes = result.account.notes;
    const Tolerances tolerances = tolerances_of(pattern);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Piece before = prepared_piece(piece, dart, tolerances, notes);
    const PlannedPivot plan = planned(before, dart, request, tolerances, notes);
    piece = turned_piece(before, plan.cut, plan.turn, notes);
    refuse_overlap(piece.outline);
    if (plan.turn.angle.is_all) {
        warn_of_corner(before.outline, plan.turn.figures, tolerances.mouth_deg, notes);
    }
    account_for(result.account, request, plan, piece);
    result.pattern.made.push_back(made_of(request, result.account));
    return result;
}

}  // namespace dartwright
