// Laws of judging, over generated pieces: the finished pattern gets all marks however it lies and whatever it
// calls things, and each fault that is put in costs its rung in its criterion and nothing else.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "assessing/drafts.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "support/evenly.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright {
namespace {

using testing::any_piece;
using testing::any_place;
using testing::GeneratedPiece;
using testing::lost;
using testing::Lost;
using testing::real_between;

/// One piece, one of its darts moved by all of it or a part, everything asked.
struct GeneratedExercise {
    Exercise exercise;
    PivotRequest request;
    double at_mm = 0;  ///< of the place along its run
    std::string edge;
    Pattern finished;
    bool is_whole = true;
};

std::vector<CriterionMarks> marks_for(const std::vector<Criterion>& criteria) {
    std::vector<CriterionMarks> out;
    for (const Criterion each : criteria) out.push_back({each, 2});
    return out;
}

CuttingRule rule_of_15_mm() {
    CuttingRule rule;
    rule.name = "all round";
    rule.allowance.elsewhere_mm = 15;
    return rule;
}

std::vector<Task> tasks_for(const GeneratedExercise& generated) {
    std::vector<Criterion> moved{Criterion::place, Criterion::angle, Criterion::legs,
                                 Criterion::mouth, Criterion::pivot, Criterion::shape};
    if (generated.is_whole) moved.push_back(Criterion::gone);
    const Made made = generated.finished.made.back();
    return {{"move", "", OperationTask{made}, marks_for(moved)},
            {"keep", "", KeepTask{},
             marks_for({Criterion::lengths, Criterion::angles, Criterion::area, Criterion::notches})},
            {"true", "", TrueTask{}, marks_for({Criterion::check})},
            {"allowances", "", AllowanceTask{rule_of_15_mm()}, marks_for({Criterion::allowances})},
            {"size", "", SizeTask{}, marks_for({Criterion::size})}};
}

/// Smaller ones are no garment, and a slip of some millimetres makes something else of them.
constexpr double least_size_mm = 250;

// A piece of two edges may be so nearly its own mirror image that a fault makes it look turned over: the last
// stretch of its second edge becomes a third.
void give_third_edge(Piece& piece) {
    if (runs_of(piece.outline).size() > 2) return;
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& second = *find_run(runs, "edge 1");
    if (second.items.size() > 1) piece.outline.items[second.items.back()].as_edge()->edge = "edge 9";
    piece.notches.clear();
    for (const Run& run : runs_of(piece.outline))
        piece.notches.push_back(
            {run.edge, name_of_end(run, RunEnd::start), run.length * 0.4, NotchKind::single});
}

enum class Moved { all, all_or_part };
GeneratedExercise any_exercise(bool may_curve, Moved moved = Moved::all_or_part) {
    GeneratedExercise out;
    GeneratedPiece generated = any_piece(may_curve, *testing::evenly(1, 3));
    if (generated.size_mm < least_size_mm)
        generated.pattern =
            testing::image({0, 1.5 * least_size_mm / generated.size_mm, false, {}}, generated.pattern);
    Piece& piece = generated.pattern.pieces[0];
    give_third_edge(piece);
    for (const Run& run : runs_of(piece.outline)) piece.allowance.emplace_back(run.edge, 15.0);
    out.request.piece = piece.name;
    out.request.dart = generated.darts[0];
    out.request.to = any_place(piece, &out.at_mm);
    RC_PRE(!out.request.to.empty());
    out.edge = out.request.to.substr(0, out.request.to.find('@'));
    // Nearer to the old mouth nobody could say which of the two is meant.
    const std::vector<Run> runs = runs_of(piece.outline);
    for (const double mouth : dart_distances(piece.outline, *find_run(runs, out.edge)))
        RC_PRE(std::abs(mouth - out.at_mm) > 15);
    out.is_whole = moved == Moved::all || *testing::evenly(0, 3) > 0;
    if (!out.is_whole) out.request.part.share = real_between(0.3, 0.7);
    out.request.name = "moved";
    out.exercise.pattern = generated.pattern;
    try {
        out.finished = pivot(generated.pattern, out.request).pattern;
    } catch (const Impossible&) {
        RC_DISCARD("the dart does not go there");
    }
    out.exercise.name = "generated";
    out.exercise.tasks = tasks_for(out);
    out.exercise.ladders = usual_ladders();
    out.exercise.may_differ = {Freedom::names, Freedom::grain};
    return out;
}

Lost lost_by(const GeneratedExercise& generated, const Pattern& draft) {
    const Assessment assessment = assess(prepared(generated.exercise), draft);
    RC_LOG() << testing::explained(assessment);
    return lost(assessment);
}

/// What a difference costs, by the ladder written out again.
Lost cost(const std::string& criterion, double off_mm) {
    const double off = std::abs(off_mm);
    if (off <= 1) return {};
    return {{criterion, off <= 25.4 / 16 ? "accepted" : off <= 25.4 / 8 ? "noted" : "fault"}};
}
/// A fault of some millimetres that does not lie on the edge of a rung.
double any_slip() {
    const double slip = real_between(0.3, 6);
    for (const double edge : {1.0, 25.4 / 16, 25.4 / 8}) RC_PRE(std::abs(slip - edge) > 0.02);
    return *testing::evenly(0, 2) == 0 ? slip : -slip;
}

RC_GTEST_PROP(assessing_properties, finished_pattern_gets_all_marks, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const Assessment assessment = assess(prepared(generated.exercise), generated.finished);
    RC_ASSERT(lost(assessment) == Lost{});
    RC_ASSERT(assessment.marks == assessment.of);
    RC_ASSERT(assessment.of > 0);
}

// Listed from another item on, and the other way round.
Pattern listed_otherwise(Pattern pattern) {
    Piece& piece = pattern.pieces[0];
    const int first = *testing::evenly(0, int(piece.outline.items.size()));
    piece.outline.start = start_of_item(piece.outline, std::size_t(first));
    std::rotate(piece.outline.items.begin(), piece.outline.items.begin() + first, piece.outline.items.end());
    if (*testing::evenly(0, 2) == 0) return pattern;
    piece.outline = reversed(piece.outline);
    for (Notch& notch : piece.notches)
        notch.from = notch.from == "start" ? "end" : notch.from == "end" ? "start" : notch.from;
    return pattern;
}

Pattern with_a_fault(GeneratedExercise& generated) {
    if (*testing::evenly(0, 3) == 0) return generated.finished;
    generated.finished.pieces[0].notches[0].at += any_slip();
    return generated.finished;
}

RC_GTEST_PROP(assessing_properties, marks_are_the_same_however_a_draft_lies_and_is_listed_and_named, ()) {
    GeneratedExercise generated = any_exercise(true);
    const PreparedExercise exercise = prepared(generated.exercise);
    const Pattern draft = with_a_fault(generated);
    Pattern other = listed_otherwise(draft);
    if (*testing::evenly(0, 2) == 0) other = testing::renamed(other);
    other = testing::image({real_between(-pi, pi),
                            1,
                            *testing::evenly(0, 2) == 0,
                            {real_between(-3000, 3000), real_between(-3000, 3000)}},
                           other);
    other.unit = Unit::inch;
    const Assessment assessment = assess(exercise, other);
    RC_ASSERT(lost(assessment) == lost(assess(exercise, draft)));
}

RC_GTEST_PROP(assessing_properties, items_of_no_length_change_no_mark, ()) {
    GeneratedExercise generated = any_exercise(true);
    const PreparedExercise exercise = prepared(generated.exercise);
    const Pattern draft = *testing::evenly(0, 3) == 0 ? generated.exercise.pattern : with_a_fault(generated);
    Pattern other = draft;
    Outline& outline = other.pieces[0].outline;
    for (int left = *testing::evenly(1, 4); left > 0; --left)
        outline = testing::with_point(outline, std::size_t(*testing::evenly(0, int(outline.items.size()))));
    const Assessment assessment = assess(exercise, other);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.marks == assess(exercise, draft).marks);
    RC_ASSERT(lost(assessment) == lost(assess(exercise, draft)));
}

RC_GTEST_PROP(assessing_properties, dart_slid_along_costs_its_place, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const double slip = any_slip();
    const Piece& piece = generated.exercise.pattern.pieces[0];
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = *find_run(runs, generated.edge);
    const double at = generated.at_mm + slip;
    std::vector<double> stops = item_distances(piece.outline, run);
    stops.push_back(run.length);
    stops.push_back(0.4 * run.length);
    for (const double stop : stops) RC_PRE(std::abs(stop - at) > 3 && std::abs(stop - generated.at_mm) > 3);
    // Nearer to the old mouth nobody could say which of the two is meant.
    for (const double mouth : dart_distances(piece.outline, run))
        RC_PRE(std::abs(mouth - generated.at_mm) > 15);
    PivotRequest request = generated.request;
    request.to = to_text(Place{run.edge, {at, false}, name_of_end(run, RunEnd::start)});
    try {
        const Pattern draft = pivot(generated.exercise.pattern, request).pattern;
        RC_ASSERT(lost_by(generated, draft) == cost("place", slip));
    } catch (const Impossible&) {
        RC_DISCARD("the dart does not go there");
    }
}

RC_GTEST_PROP(assessing_properties, longer_leg_costs_the_legs, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const double slip = any_slip();
    Pattern draft = generated.finished;
    Piece& piece = draft.pieces[0];
    const std::size_t item = testing::dart_item(piece, "moved");
    const DartFigures figures = figures_of(piece.outline, item);
    // Splines go round all their points, so that one moved end bends the whole of them.
    const std::size_t after = (item + 1) % piece.outline.items.size();
    RC_PRE(!std::holds_alternative<SplineShape>(piece.outline.items[after].as_edge()->shape));
    RC_PRE(item + 1 < piece.outline.items.size());
    piece.outline.items[item].to = figures.b + slip * unit(figures.b - figures.pivot);
    const double leg_a = distance(figures.point, figures.a);
    const double leg_b = distance(figures.point, piece.outline.items[item].to);
    const double off = std::max(std::abs(leg_b - leg_a), std::abs(slip));
    RC_ASSERT(lost_by(generated, draft) == cost("legs", off));
}

RC_GTEST_PROP(assessing_properties, moved_notch_costs_the_notches, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const double slip = any_slip();
    Pattern draft = generated.finished;
    std::vector<Notch>& notches = draft.pieces[0].notches;
    notches[testing::any_index_of(notches)].at += slip;
    RC_ASSERT(lost_by(generated, draft) == cost("notches", slip));
}

std::size_t kinks_of(const Pattern& pattern) {
    const std::vector<Finding> findings = check(pattern, {}).findings;
    return std::size_t(std::count_if(findings.begin(), findings.end(),
                                     [](const Finding& each) { return each.check == "outline-kink"; }));
}

// A corner between two straight runs, moved along the first of them.
RC_GTEST_PROP(assessing_properties, longer_run_costs_the_lengths, ()) {
    const GeneratedExercise generated = any_exercise(false);
    const double slip = any_slip();
    Pattern draft = generated.finished;
    std::vector<OutlineItem>& items = draft.pieces[0].outline.items;
    const std::size_t i = std::size_t(*testing::evenly(0, int(items.size()) - 1));
    const EdgeItem* edge = items[i].as_edge();
    const EdgeItem* next = items[i + 1].as_edge();
    const bool is_corner = edge && next && edge->edge != next->edge;
    RC_PRE(is_corner);
    const Point from = start_of_item(draft.pieces[0].outline, i);
    RC_PRE(distance(from, items[i].to) > 20);
    items[i].to = items[i].to + slip * unit(items[i].to - from);
    // The next run changes by the corner; where that makes more of it than of the first, it is judged.
    const std::vector<Run> before = runs_of(generated.finished.pieces[0].outline);
    const std::vector<Run> after = runs_of(draft.pieces[0].outline);
    const double other = find_run(after, next->edge)->length - find_run(before, next->edge)->length;
    RC_PRE(std::abs(other) < std::abs(slip));
    // A slip that no rung takes marks for may still bend a short edge into a corner, which is a fault by
    // itself.
    RC_PRE(std::abs(slip) > 1 || kinks_of(draft) <= kinks_of(generated.finished));
    RC_ASSERT(lost_by(generated, draft) == cost("lengths", slip));
}

RC_GTEST_PROP(assessing_properties, allowance_of_another_width_costs_the_allowances, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const double slip = any_slip();
    Pattern draft = generated.finished;
    auto& widths = draft.pieces[0].allowance;
    widths[testing::any_index_of(widths)].second = 15 + slip;
    RC_ASSERT(lost_by(generated, draft) == cost("allowances", slip));
}

RC_GTEST_PROP(assessing_properties, another_size_costs_the_size_alone, ()) {
    const GeneratedExercise generated = any_exercise(true);
    const double scale = *rc::gen::element(0.97, 1.04, 10.0, 0.1, 25.4, 1 / 25.4, 2.54, 1 / 2.54, 0.5, 2.0);
    double longest = 0;
    for (const Run& run : runs_of(generated.finished.pieces[0].outline))
        longest = std::max(longest, run.length);
    const Pattern draft = testing::image({real_between(-pi, pi), scale, false, {5, 5}}, generated.finished);
    RC_ASSERT(lost_by(generated, draft) == cost("size", (scale - 1) * longest));
}

RC_GTEST_PROP(assessing_properties, dart_that_was_never_moved_earns_nothing_of_its_task, ()) {
    const GeneratedExercise generated = any_exercise(true, Moved::all);
    const Assessment assessment = assess(prepared(generated.exercise), generated.exercise.pattern);
    Lost expected;
    for (const char* each : {"place", "angle", "legs", "mouth", "pivot", "gone", "shape"})
        expected[each] = "fault";
    RC_ASSERT(lost(assessment) == expected);
}

RC_GTEST_PROP(assessing_properties, part_of_a_dart_left_costs_gone_alone, ()) {
    const GeneratedExercise generated = any_exercise(true, Moved::all);
    PivotRequest request = generated.request;
    request.part.share = real_between(0.3, 0.7);
    try {
        const Pattern draft = pivot(generated.exercise.pattern, request).pattern;
        const Piece& piece = draft.pieces[0];
        const std::size_t left = testing::dart_item(piece, generated.request.dart);
        const double left_deg = degrees(figures_of(piece.outline, left).angle_rad);
        RC_PRE(std::abs(left_deg - 2) > 0.001);
        RC_ASSERT(lost_by(generated, draft) == (Lost{{"gone", left_deg > 2 ? "fault" : "noted"}}));
    } catch (const Impossible&) {
        RC_DISCARD("the dart does not go there");
    }
}

}  // namespace
}  // namespace dartwright
