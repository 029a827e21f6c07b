#include "dartwright/darts/turning/planned_turn.hpp"

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

void choose_press(PlannedTurn& plan, const Piece& piece, const TurnWanted& wanted, Vector axis, Notes notes) {
    const bool is_corner = plan.target.at_start || plan.target.at_end;
    const std::string press = wanted.press.empty() ? plan.turn.dart.press : wanted.press;
    const PressChosen chosen =
        press_chosen(piece, plan.runs, {press, is_corner ? "" : plan.target.edge, axis});
    plan.turn.opened.press = chosen.edge;
    if (!chosen.note.empty()) notes.push_back(chosen.note);
}

}  // namespace

PlannedTurn planned_turn(const Piece& piece, const TurnWanted& wanted, Notes notes) {
    PlannedTurn plan;
    const std::size_t dart = dart_named(piece, wanted.dart);
    plan.runs = runs_of(piece.outline);
    plan.turn.dart = *piece.outline.items[dart].as_dart();
    plan.turn.figures = figures_of(piece.outline, dart);
    plan.turn.angle = wanted.angle;
    plan.target = target_chosen(piece, plan.runs, wanted.to);
    const bool is_name_kept = wanted.is_name_kept && wanted.angle.is_all;
    plan.turn.opened.name = name_chosen(piece, dart, {wanted.name, plan.target.edge, is_name_kept});
    plan.cut = cut_at_target(piece.outline, plan.target, wanted.dart);
    plan.turn.is_after_held = is_after_dart_held(piece, plan.cut, wanted.hold);
    const Vector axis = start_of_item(plan.cut.outline, plan.cut.target) - plan.turn.figures.pivot;
    plan.turn.opened.back_off = back_off_chosen(wanted.back_off_mm, plan.turn.figures, norm(axis));
    choose_press(plan, piece, wanted, axis, notes);
    if (plan.turn.dart.legs) notes.push_back("the curved legs are drawn straight");
    return plan;
}

void judge_cut(const Piece& piece, const PlannedTurn& plan) {
    const Sentence trouble = trouble_with(plan.cut.polygon, plan.cut.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    refuse_blocked_cut(piece, plan.cut, plan.target);
}

}  // namespace dartwright
