#include <algorithm>
#include <cmath>

#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/comparing/compared_notches.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

constexpr double shown_mm = 0.05;  // less than what a message shows
/// Farther than any pattern reaches, mm.
constexpr double largest_off_mm = 1e9;

ScoredLine length_of(const DraftFacts& facts, const RunFact& run) {
    JudgedLine line = about_run(facts, Criterion::lengths, run);
    line.what = "the sewn length of the " + run.edge;
    line.remedy = "Redraw the " + run.edge + " to the length that it had; moving a dart keeps it.";
    if (!run.found_mm) line.remedy = "Draw the " + run.edge + ": there is none on the " + line.piece + ".";
    if (!run.found_mm) return fault_line(std::move(line), "an edge", "no such edge");
    ScoredLine out = length_line(facts, std::move(line), {run.expected_mm, *run.found_mm, run.own_mm});
    const double whole = *run.found_mm - run.expected_mm;
    if (std::abs(whole - run.own_mm) > shown_mm)
        out.line.found_words = "of the difference, " + length_words(facts, std::abs(whole - run.own_mm)) +
                               " are judged with its seam, its dart or the corner beside it";
    return out;
}

ScoredLine seam_of(const DraftFacts& facts, const SeamFact& seam) {
    JudgedLine line;
    line.criterion = Criterion::seams;
    line.seam = seam.seam->name;
    const SeamPart& part = seam.seam->joins[0].front();
    line.piece = part.piece;
    line.edge = part.edge;
    line.what = "the sides of the " + seam.seam->name + " seam, walked";
    if (!seam.is_there) return fault_line(std::move(line), "a seam", "an edge of it is not there");
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        if (facts.plan->finished[i].piece.name == part.piece) line.at = middle_of_run(facts, i, part.edge);
    line.remedy = "Walk one side along the other and true the end that is " +
                  length_words(facts, std::abs(seam.off_mm)) + " out, on both sides.";
    const double expected = seam.difference_mm - seam.off_mm;
    line.found_words =
        length_words(facts, seam.lengths_mm[0]) + " and " + length_words(facts, seam.lengths_mm[1]);
    return length_line(facts, std::move(line), {expected, seam.difference_mm, seam.off_mm});
}

struct NotchOf {
    std::size_t piece = 0;
    const ComparedNotch& notch;
};

// From the end from which it is less off: a run of another length moves it from the other.
ScoredLine notch_of(const DraftFacts& facts, const NotchOf& of) {
    const ComparedNotch& notch = of.notch;
    JudgedLine line;
    line.criterion = Criterion::notches;
    line.piece = facts.plan->finished[of.piece].piece.name;
    line.edge = notch.edge;
    const BeforeAfter& from_start = notch.at_mm[0];
    const BeforeAfter& from_end = notch.at_mm[1];
    const auto off = [](const BeforeAfter& at) { return std::abs(at.difference().value_or(0)); };
    const std::size_t end = off(from_end) < off(from_start) ? 1 : 0;
    line.what = "the notch on the " + notch.edge + " from the " + notch.from[end];
    line.remedy =
        "Measure the notch along the seam line again, darts closed, from the " + notch.from[end] + ".";
    if (!notch.kind_after) line.remedy = "Mark the notch at its place along the seam line, darts closed.";
    if (!notch.kind_before) line.remedy = "Take the notch out.";
    if (!notch.kind_after)
        return fault_line(std::move(line), "a notch at " + length_words(facts, *from_start.before), "none");
    const ShapedPiece& drawn = facts.draft.pieces[of.piece]->shaped;
    if (const Run* run = find_run(drawn.runs, notch.edge))
        line.at =
            drawn_place(facts, of.piece, place_on_run(drawn.piece.outline, *run, *from_start.after).point);
    if (!notch.kind_before)
        return fault_line(std::move(line), "no notch",
                          "a notch at " + length_words(facts, *from_start.after));
    if (notch.kind_after != notch.kind_before) line.remedy = "Cut the notch as its partner is cut.";
    if (notch.kind_after != notch.kind_before)
        return fault_line(std::move(line), "as many cuts as its partner has", "another kind of notch");
    const BeforeAfter& at = notch.at_mm[end];
    return length_line(facts, std::move(line), {*at.before, *at.after, *at.difference()});
}

// With a piece that is not there its notches are not either.
void add_missing_notches(ScoredLines& lines, const ShapedPiece& expected) {
    for (const Notch& notch : expected.piece.notches) {
        JudgedLine line;
        line.criterion = Criterion::notches;
        line.piece = expected.piece.name;
        line.edge = notch.edge;
        line.what = "the notch on the " + notch.edge;
        line.remedy = "Hand in the " + expected.piece.name + ", with its notches.";
        lines.push_back(fault_line(std::move(line), "a notch", "no such piece"));
    }
}

struct PivotGroup {
    std::vector<const DartFact*> darts;
    double expected_deg = 0;
    double found_deg = 0;
    double off_deg = 0;  ///< what no other criterion judges
};

// An angle that a task asks for is judged there.
void add_dart(const DraftFacts& facts, PivotGroup& group, const DartFact& dart) {
    group.darts.push_back(&dart);
    const double expected = degrees(dart.asked->dart.figures.angle_rad);
    const double found = dart.found ? degrees(dart.angle_rad) : 0;
    group.expected_deg += expected;
    group.found_deg += found;
    const bool is_judged = facts.plan->asks(*dart.asked, Criterion::angle) ||
                           (!dart.found && facts.plan->asks(*dart.asked, Criterion::place));
    if (!is_judged) group.off_deg += found - expected;
}

std::vector<PivotGroup> groups_of(const DraftFacts& facts, std::size_t piece) {
    std::vector<PivotGroup> groups;
    for (const DartFact& dart : facts.darts) {
        if (dart.asked->piece != piece) continue;
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const PivotGroup& group) {
            return distance(group.darts.front()->asked->dart.figures.pivot, dart.asked->dart.figures.pivot) <=
                   one_point_mm;
        });
        PivotGroup& group = same == groups.end() ? groups.emplace_back() : *same;
        add_dart(facts, group, dart);
    }
    return groups;
}

// The group to whose pivot a dart that nobody asked for comes nearest.
void add_extra(std::vector<PivotGroup>& groups, const StandingDart& dart, bool is_judged) {
    const auto off = [&](const PivotGroup& group) {
        const DartFact& first = *group.darts.front();
        return first.found ? distance(first.pivot, dart.figures.pivot) : largest_off_mm;
    };
    const auto nearest =
        std::min_element(groups.begin(), groups.end(),
                         [&](const PivotGroup& a, const PivotGroup& b) { return off(a) < off(b); });
    if (nearest == groups.end()) return;
    const double angle = degrees(std::abs(dart.figures.angle_rad));
    nearest->found_deg += angle;
    if (!is_judged) nearest->off_deg += angle;
}

std::vector<PivotGroup> judged_groups(const DraftFacts& facts, std::size_t piece) {
    std::vector<PivotGroup> groups = groups_of(facts, piece);
    for (const StandingDart& extra : facts.pieces[piece].extra) add_extra(groups, extra, false);
    for (const ClosedFact& closed : facts.closed)
        if (closed.piece == piece && closed.left)
            add_extra(groups, *closed.left, facts.plan->asks(closed.asked->task, Criterion::gone));
    return groups;
}

ScoredLine angle_about(const DraftFacts& facts, const PivotGroup& group) {
    const DartFact& first = *group.darts.front();
    JudgedLine line = about_dart(facts, Criterion::angles, first);
    std::vector<std::string> names;
    for (const DartFact* dart : group.darts) names.push_back(dart->asked->dart.name);
    if (names.size() > 1) line.dart.clear();
    line.edge.clear();
    if (first.found) line.at = drawn_place(facts, first.asked->piece, first.pivot);
    line.what = "the angle about the pivot of " + all_of(names) + ", together";
    line.remedy =
        "What one dart gives up another must take: measure the angles at the pivot and make good what is "
        "missing or too much.";
    ScoredLine out = angle_line(facts, std::move(line), {group.expected_deg, group.found_deg, group.off_deg});
    const double whole = group.found_deg - group.expected_deg;
    if (std::abs(whole - group.off_deg) > rung_rounding)
        out.line.found_words = "of the difference, " + degrees_in_sentence(std::abs(whole - group.off_deg)) +
                               " are judged with the dart that was to be moved";
    return out;
}

}  // namespace

ScoredLines lengths_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines = borne_size(facts, Criterion::lengths);
    for (const RunFact& run : facts.runs) lines.push_back(length_of(facts, run));
    return lines;
}

ScoredLines seams_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines;
    for (const SeamFact& seam : facts.seams) lines.push_back(seam_of(facts, seam));
    return lines;
}

ScoredLines notches_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines;
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) {
        if (!facts.draft.pieces[i]) {
            add_missing_notches(lines, facts.plan->finished[i]);
            continue;
        }
        for (const ComparedNotch& notch :
             compared_notches({facts.plan->finished[i], facts.draft.pieces[i]->shaped})) {
            if (!notch.kind_before && facts.plan->may_differ(Freedom::notches)) continue;
            lines.push_back(notch_of(facts, {i, notch}));
        }
    }
    return lines;
}

ScoredLines angles_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines;
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        for (const PivotGroup& group : judged_groups(facts, i)) lines.push_back(angle_about(facts, group));
    return lines;
}

}  // namespace dartwright
