#include <algorithm>
#include <cmath>

#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

constexpr double largest_mm = 1e9;  // longer than any edge

// A dart that is not there cannot be judged, and earns nothing.
ScoredLine missing_dart(const DraftFacts& facts, Criterion criterion, const DartFact& dart) {
    JudgedLine line = about_dart(facts, criterion, dart);
    line.what = dart.asked->dart.name + " on the " + dart.asked->dart.edge;
    line.remedy = "Cut from the pivot to its place, close the old dart, and let the new one open there.";
    return fault_line(std::move(line), "a dart", "no dart");
}

ScoredLine unchanged_dart(const DraftFacts& facts, Criterion criterion, const DartFact& dart) {
    JudgedLine line = about_dart(facts, criterion, dart);
    line.what = dart.asked->dart.name + " on the " + dart.asked->dart.edge;
    line.remedy = "Do what the task asks for: this dart is as it was.";
    return fault_line(std::move(line), "changed", "as it was");
}

template <class Judge>
ScoredLines of_each_dart(const DraftFacts& facts, const MarkedTask& task, Criterion criterion,
                         const Judge& judge) {
    ScoredLines lines;
    for (const DartFact& dart : facts.darts) {
        if (dart.asked->task_of(criterion) != task.index) continue;
        if (!dart.found) {
            lines.push_back(missing_dart(facts, criterion, dart));
            continue;
        }
        if (is_as_it_was(facts, dart, task.index)) {
            lines.push_back(unchanged_dart(facts, criterion, dart));
            continue;
        }
        for (ScoredLine& line : judge(dart)) lines.push_back(std::move(line));
    }
    return lines;
}

struct PlaceOnRun {
    double expected = 0;
    double found = 0;
    double off = 0;
};
// From the end that was asked. Where the run's own length is judged, what it lacks or has too much on the one
// side of the dart is that length's, so that the other end counts as well.
PlaceOnRun place_on(const DraftFacts& facts, const DartFact& dart, const Run& expected, const Run& found) {
    const double here = dart.asked->dart.distance_mm;
    const double there = dart.found->distance_mm;
    const bool is_start = dart.asked->from == RunEnd::start;
    PlaceOnRun out{is_start ? here : expected.length - here, is_start ? there : found.length - there, 0};
    out.off = out.found - out.expected;
    const double from_other_end = (found.length - out.found) - (expected.length - out.expected);
    const bool is_length_judged = facts.plan->asks(Criterion::lengths) ||
                                  facts.plan->asks(Criterion::seams) || facts.has_legs_off(dart);
    if (is_length_judged && std::abs(from_other_end) < std::abs(out.off)) out.off = -from_other_end;
    return out;
}

ScoredLine place_elsewhere(const DraftFacts& facts, const DartFact& dart, JudgedLine line) {
    line.what = "the place of " + dart.asked->dart.name;
    line.remedy = "Measure the place on the " + dart.asked->dart.edge + ", and cut from the pivot to it.";
    const double around = sewn_around(facts.draft.pieces[dart.asked->piece]->shaped);
    const double off = std::remainder(dart.found->around_mm - dart.asked->dart.around_mm, around);
    ScoredLine out = length_line(facts, std::move(line), {0, off, off});
    out.line.expected.reset();
    out.line.found.reset();
    out.line.expected_words = "on the " + dart.asked->dart.edge;
    out.line.found_words = "on the " + dart.found->edge;
    return out;
}

ScoredLines place_of(const DraftFacts& facts, const DartFact& dart) {
    JudgedLine line = about_dart(facts, Criterion::place, dart);
    if (dart.found->edge != dart.asked->dart.edge) return {place_elsewhere(facts, dart, std::move(line))};
    const std::size_t piece = dart.asked->piece;
    const Run& expected = *find_run(facts.plan->finished[piece].runs, dart.asked->dart.edge);
    const Run& found = *find_run(facts.draft.pieces[piece]->shaped.runs, dart.asked->dart.edge);
    const std::string end = name_of_end(expected, dart.asked->from);
    const PlaceOnRun place = place_on(facts, dart, expected, found);
    line.what = "the place of " + dart.asked->dart.name + " along the " + expected.edge + " from the " + end;
    line.remedy = "Move the dart " + length_words(facts, std::abs(place.off)) +
                  (place.off > 0 ? " towards the " : " away from the ") + end + ".";
    ScoredLine out = length_line(facts, std::move(line), {place.expected, place.found, place.off});
    if (std::abs(place.found - place.expected - place.off) > sum_rounding_mm)
        out.line.found_words =
            "measured from the other end, as the length of the " + expected.edge + " is judged already";
    return {out};
}

// What is left open where the task closed a dart: it lacks here, and is judged there.
double left_open_deg(const DraftFacts& facts, const DartFact& dart) {
    double left = 0;
    for (const ClosedFact& closed : facts.closed)
        if (closed.left && dart.asked->is_touched_by(closed.asked->task) &&
            facts.plan->asks(closed.asked->task, Criterion::gone) && closed.piece == dart.asked->piece)
            left += degrees(std::abs(closed.left->figures.angle_rad));
    return left;
}

ScoredLines angle_of(const DraftFacts& facts, const DartFact& dart) {
    const double expected = degrees(std::abs(dart.asked->dart.figures.angle_rad));
    const double found = degrees(std::abs(dart.angle_rad));
    double off = found - expected;
    std::string why;
    const auto offer = [&](double other, const char* reason) {
        if (std::abs(off) <= rung_rounding || std::abs(other) >= std::abs(off)) return;
        off = other;
        why = reason;
    };
    offer(found + left_open_deg(facts, dart) - expected, "what is left of the old dart is judged there");
    // By the same task, or the one that this slip was made in would lose nothing.
    const bool is_here = dart.asked->task_of(Criterion::pivot) == dart.asked->task_of(Criterion::angle);
    if (is_here && facts.has_pivot_off(dart) && dart.turned_rad)
        offer(found - degrees(*dart.turned_rad),
              "measured about the point it was turned about, judged as the pivot");
    JudgedLine line = about_dart(facts, Criterion::angle, dart);
    line.what = "the angle of " + dart.asked->dart.name + " at the pivot";
    line.remedy = off < 0
                      ? "Open the dart to the whole angle that was to move, and close the old one by as much."
                      : "Close the dart to the angle that was to move: cloth is lost that nothing gave up.";
    ScoredLine out = angle_line(facts, std::move(line), {expected, found, off});
    out.line.found_words = why;
    return {out};
}

ScoredLines legs_of(const DraftFacts& facts, const DartFact& dart) {
    const DartFigures& figures = dart.found->figures;
    JudgedLine line = about_dart(facts, Criterion::legs, dart);
    line.what = "the legs of " + dart.asked->dart.name;
    line.expected_words = "of one length";
    line.found_words = length_words(facts, figures.leg_a) + " and " + length_words(facts, figures.leg_b);
    line.remedy =
        "Fold the dart on its centre line and walk one leg along the other; trim or lengthen one, so that "
        "both end together.";
    ScoredLines lines{length_line(facts, line, {0, dart.legs_off_mm, dart.legs_off_mm})};
    line.what = "the point of " + dart.asked->dart.name;
    line.expected_words = "on the centre line";
    line.found_words.clear();
    line.at = drawn_place(facts, dart.asked->piece, figures.point);
    line.remedy = "Draw the centre line from the middle of the mouth to the pivot and put the point on it.";
    ScoredLine point = length_line(facts, line, {0, dart.bisector_off_mm, dart.bisector_off_mm});
    if (facts.has_legs_off(dart) || facts.has_pivot_off(dart))
        point = judged_elsewhere(facts.lengths(), std::move(point), "follows from what is judged already");
    lines.push_back(std::move(point));
    return lines;
}

// By how much the ends of the edges beside a mouth lie elsewhere for reasons that are judged already: a leg,
// or a run there of another length.
double moved_beside_mouth(const DraftFacts& facts, const DartFact& dart) {
    const std::vector<Run>& runs = facts.plan->finished[dart.asked->piece].runs;
    const Run* run = find_run(runs, dart.found->edge);
    double moved = 0;
    if (!run || (!facts.plan->asks(Criterion::lengths) && !facts.plan->asks(Criterion::seams))) return moved;
    for (const std::string& edge : {run->edge, run->before, run->after}) {
        const RunFact* fact = facts.run(dart.asked->piece, edge);
        if (fact && fact->found_mm) moved = std::max(moved, std::abs(*fact->found_mm - fact->expected_mm));
    }
    return moved;
}

// How far from a mouth the place lies that its edge heads for: as far as that, a moved end turns the edge.
double heading_mm(const Outline& outline, std::size_t item, Point mouth) {
    const EdgeItem& edge = *outline.items[item].as_edge();
    if (const auto* cubic = std::get_if<CubicShape>(&edge.shape))
        return std::min(distance(mouth, cubic->controls[0]), distance(mouth, cubic->controls[1]));
    if (const auto* spline = std::get_if<SplineShape>(&edge.shape)) {
        double least = largest_mm;
        for (const Point p : spline->through) least = std::min(least, distance(mouth, p));
        return least;
    }
    return length_of_item(outline, item);
}

// The corner that this makes at a mouth, degrees.
double corner_explained_deg(const DraftFacts& facts, const DartFact& dart) {
    const Outline& outline = facts.draft.pieces[dart.asked->piece]->shaped.piece.outline;
    const std::size_t count = outline.items.size();
    double beside = largest_mm;
    const std::size_t before = (dart.found->item + count - 1) % count;
    const std::size_t after = (dart.found->item + 1) % count;
    if (outline.items[before].as_edge()) beside = heading_mm(outline, before, dart.found->figures.a);
    if (outline.items[after].as_edge())
        beside = std::min(beside, heading_mm(outline, after, dart.found->figures.b));
    double moved = moved_beside_mouth(facts, dart);
    for (const DartFact& each : facts.darts)
        if (each.asked->piece == dart.asked->piece && each.found && each.found->edge == dart.found->edge)
            moved += each.legs_off_mm;
    // On both sides of the mouth, and the more the steeper it heads away.
    return moved > sum_rounding_mm ? 2 * degrees(angle_of_sine(std::min(1.0, moved / beside))) : 0;
}

ScoredLines mouth_of(const DraftFacts& facts, const DartFact& dart) {
    const double expected = dart.asked->dart.kink_deg;
    const double found = dart.kink_deg;
    JudgedLine line = about_dart(facts, Criterion::mouth, dart);
    line.what = "the " + dart.found->edge + " over the mouth of " + dart.asked->dart.name + ", closed";
    line.remedy = "Fold the dart as it will be pressed, draw the " + dart.found->edge +
                  " smooth across it, cut along that line and unfold.";
    const double more = std::max(0.0, found - expected);
    const double off = std::max(0.0, more - corner_explained_deg(facts, dart));
    ScoredLine out = angle_line(facts, std::move(line), {expected, found, off});
    if (facts.has_legs_off(dart))
        out = judged_elsewhere(facts.angles(), std::move(out), "follows from its legs, judged already");
    if (facts.is_copied(dart))
        out = judged_elsewhere(facts.angles(), std::move(out), "follows from the old dart, judged already");
    return {out};
}

ScoredLine turned_line(const DraftFacts& facts, const DartFact& dart) {
    JudgedLine line = about_dart(facts, Criterion::pivot, dart);
    line.what = "the place about which the part was turned for " + dart.asked->dart.name;
    line.expected_words = "the pivot";
    if (dart.centre) line.at = drawn_place(facts, dart.asked->piece, *dart.centre);
    line.remedy =
        "Cut to the pivot, not to the dart's point, and turn the part about it; mark the new point "
        "afterwards, short of it.";
    return length_line(facts, std::move(line), {0, dart.centre_off_mm, dart.centre_off_mm});
}

ScoredLine aim_line(const DraftFacts& facts, const DartFact& dart) {
    JudgedLine line = about_dart(facts, Criterion::pivot, dart);
    line.what = "how far " + dart.asked->dart.name + " aims beside its pivot";
    line.at = drawn_place(facts, dart.asked->piece, dart.found->figures.point);
    line.remedy = "Draw the dart's centre line from the middle of its mouth to the pivot.";
    return length_line(facts, std::move(line), {0, dart.aim_off_mm, dart.aim_off_mm});
}

ScoredLine back_off_line(const DraftFacts& facts, const DartFact& dart) {
    const double expected = dart.asked->dart.figures.back_off;
    const DartFigures& figures = dart.found->figures;
    const Vector out_of_piece = unit(middle(figures.a, figures.b) - dart.used_pivot);
    const double found = dot(figures.point - dart.used_pivot, out_of_piece);
    JudgedLine line = about_dart(facts, Criterion::pivot, dart);
    line.what = "how far the point of " + dart.asked->dart.name + " stops short of its pivot";
    line.at = drawn_place(facts, dart.asked->piece, figures.point);
    line.remedy = "Move the point along the dart's centre line and draw the legs to it again.";
    const bool is_free = facts.plan->may_differ(Freedom::back_off);
    // Never beyond the pivot, whatever may differ.
    const double off = is_free ? std::min(0.0, found - std::min(0.0, expected)) : found - expected;
    ScoredLine judged = length_line(facts, std::move(line), {expected, found, off});
    if (facts.has_pivot_off(dart))
        judged =
            judged_elsewhere(facts.lengths(), std::move(judged), "follows from the pivot, judged already");
    return judged;
}

ScoredLines pivot_of(const DraftFacts& facts, const DartFact& dart) {
    ScoredLines lines;
    if (dart.turned_rad) lines.push_back(turned_line(facts, dart));
    lines.push_back(aim_line(facts, dart));
    lines.push_back(back_off_line(facts, dart));
    return lines;
}

}  // namespace

ScoredLines place_lines(const DraftFacts& facts, const MarkedTask& task) {
    return of_each_dart(facts, task, Criterion::place,
                        [&](const DartFact& dart) { return place_of(facts, dart); });
}
ScoredLines angle_lines(const DraftFacts& facts, const MarkedTask& task) {
    return of_each_dart(facts, task, Criterion::angle,
                        [&](const DartFact& dart) { return angle_of(facts, dart); });
}
ScoredLines legs_lines(const DraftFacts& facts, const MarkedTask& task) {
    return of_each_dart(facts, task, Criterion::legs,
                        [&](const DartFact& dart) { return legs_of(facts, dart); });
}
ScoredLines mouth_lines(const DraftFacts& facts, const MarkedTask& task) {
    return of_each_dart(facts, task, Criterion::mouth,
                        [&](const DartFact& dart) { return mouth_of(facts, dart); });
}
ScoredLines pivot_lines(const DraftFacts& facts, const MarkedTask& task) {
    return of_each_dart(facts, task, Criterion::pivot,
                        [&](const DartFact& dart) { return pivot_of(facts, dart); });
}

ScoredLines gone_lines(const DraftFacts& facts, const MarkedTask& task) {
    ScoredLines lines;
    for (const ClosedFact& closed : facts.closed) {
        if (closed.asked->task != task.index) continue;
        JudgedLine line;
        line.criterion = Criterion::gone;
        line.piece = closed.piece ? facts.plan->finished[*closed.piece].piece.name : closed.asked->dart.piece;
        line.edge = closed.asked->dart.edge;
        line.dart = closed.asked->dart.dart;
        line.what = "what is left open of the old dart on the " + closed.asked->dart.edge;
        line.remedy =
            "Close the old dart: cut to the pivot, bring its legs together and tape them, so that the "
            "new one opens by as much; a dart that is only drawn again takes the cloth in twice.";
        if (!closed.is_there) {
            lines.push_back(fault_line(std::move(line), "closed", "no such piece"));
            continue;
        }
        if (was_never_opened(facts, closed)) {
            line.remedy =
                "Do what the task before it asks for: the dart that this one closes never was open.";
            lines.push_back(fault_line(std::move(line), "opened and closed", "never opened"));
            continue;
        }
        double left = 0;
        if (closed.left) {
            const DartFigures& figures = closed.left->figures;
            left = degrees(std::abs(figures.angle_rad));
            if (closed.piece) line.at = drawn_place(facts, *closed.piece, middle(figures.a, figures.b));
        }
        lines.push_back(angle_line(facts, std::move(line), {0, left, left}));
    }
    return lines;
}

}  // namespace dartwright
