// What was to be done and is still as it was earns nothing, however well it was drawn before.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

/// Differences are counted in last rungs of the ladders, beyond which each is a fault. A ladder that allows
/// nothing is taken for one of this much, mm or degrees.
constexpr double least_rung = 1e-3;
/// What was copied by hand is off by up to so many, 9.5 mm and 6 degrees on the usual ladders: 2 mm on every
/// point of a bodice come to that. What is farther off was drawn to be something else.
constexpr double copied_within = 3;

class InRungs {
  public:
    explicit InRungs(const Ladders& ladders)
        : length_(std::max(ladders.lengths.back().within, least_rung)),
          angle_(std::max(ladders.angles.back().within, least_rung)) {}
    double length(double a, double b) const { return std::abs(a - b) / length_; }
    double angle_deg(double a, double b) const { return std::abs(a - b) / angle_; }

  private:
    double length_;
    double angle_;
};

/// How a dart is drawn, wherever it lies.
struct DrawnDart {
    double angle_deg = 0;
    double leg_a = 0;
    double leg_b = 0;
    double intake = 0;
    double back_off = 0;
    double kink_deg = 0;
};
DrawnDart drawn_dart(const StandingDart& dart) {
    const DartFigures& figures = dart.figures;
    return {degrees(std::abs(figures.angle_rad)),
            figures.leg_a,
            figures.leg_b,
            figures.intake,
            figures.back_off,
            dart.kink_deg};
}
// A dart that is drawn to no pivot is measured about the one that the piece has.
DrawnDart drawn_dart(const DartFact& fact) {
    const DartFigures& figures = fact.found->figures;
    DrawnDart out = drawn_dart(*fact.found);
    out.angle_deg = degrees(std::abs(fact.angle_rad));
    out.back_off = dot(figures.point - fact.used_pivot, unit(middle(figures.a, figures.b) - fact.used_pivot));
    out.kink_deg = fact.kink_deg;
    return out;
}

double apart(const InRungs& rungs, const DrawnDart& a, const DrawnDart& b) {
    return std::max({rungs.angle_deg(a.angle_deg, b.angle_deg), rungs.length(a.leg_a, b.leg_a),
                     rungs.length(a.leg_b, b.leg_b), rungs.length(a.intake, b.intake),
                     rungs.length(a.back_off, b.back_off), rungs.angle_deg(a.kink_deg, b.kink_deg)});
}

// What two states have in common and the draft has not counts against both alike: the nearer is told by what
// was to change.
double squares_apart(const InRungs& rungs, const DrawnDart& a, const DrawnDart& b) {
    const std::array<double, 6> each{rungs.angle_deg(a.angle_deg, b.angle_deg),
                                     rungs.length(a.leg_a, b.leg_a),
                                     rungs.length(a.leg_b, b.leg_b),
                                     rungs.length(a.intake, b.intake),
                                     rungs.length(a.back_off, b.back_off),
                                     rungs.angle_deg(a.kink_deg, b.kink_deg)};
    return std::inner_product(each.begin(), each.end(), each.begin(), 0.0);
}

/// States nearer than this are the same one, mm and degrees: both are computed, and differ by rounding alone.
constexpr double same_state = 1e-6;

bool is_same(const DrawnDart& a, const DrawnDart& b) {
    const auto near = [](double x, double y) { return std::abs(x - y) <= same_state; };
    return near(a.angle_deg, b.angle_deg) && near(a.leg_a, b.leg_a) && near(a.leg_b, b.leg_b) &&
           near(a.intake, b.intake) && near(a.back_off, b.back_off) && near(a.kink_deg, b.kink_deg);
}

constexpr double another = std::numeric_limits<double>::infinity();

// A dart that is drawn to no pivot is taken to have the known one's, and is known by its legs.
DrawnDart as_written(const StandingDart& drawn, const StandingDart& known) {
    DrawnDart out = drawn_dart(drawn);
    if (drawn.figures.pivot != drawn.figures.point) return out;
    out.angle_deg = degrees(std::abs(known.figures.angle_rad));
    out.back_off = known.figures.back_off;
    return out;
}

double darts_apart(const InRungs& rungs, const ShapedPiece& known, const ShapedPiece& drawn) {
    const std::vector<StandingDart> before = standing_darts(known, edges_of(known));
    const std::vector<StandingDart> after = standing_darts(drawn, edges_of(known));
    if (before.size() != after.size()) return another;
    double most = 0;
    for (const StandingDart& dart : before) {
        double least = another;
        for (const StandingDart& other : after)
            if (other.edge == dart.edge)
                least = std::min(least, std::max(rungs.length(dart.distance_mm, other.distance_mm),
                                                 apart(rungs, drawn_dart(dart), as_written(other, dart))));
        most = std::max(most, least);
    }
    return most;
}

double most_strayed(const InRungs& rungs, const RigidParts& parts) {
    double most = 0;
    for (const ComparedPart& part : parts.parts) most = std::max(most, rungs.length(part.strays_mm, 0));
    return most;
}

// How far a piece is from a known one, wherever it lies, in rungs, but for what its edges stray.
double sizes_apart(const InRungs& rungs, const ShapedPiece& known, const ShapedPiece& drawn) {
    if (known.runs.size() != drawn.runs.size()) return another;
    double most = 0;
    for (const Run& run : known.runs) {
        const Run* found = find_run(drawn.runs, run.edge);
        if (!found) return another;
        most = std::max(most, rungs.length(run.length, found->length));
    }
    return most <= copied_within ? std::max(most, darts_apart(rungs, known, drawn)) : most;
}

// Nearer to what was handed out than to what is asked, and no farther from it than a hand that copies is.
bool is_as_handed_out(const DraftFacts& facts, std::size_t piece) {
    const auto& start = facts.plan->start[piece];
    if (!start || !facts.draft.pieces[piece]) return false;
    const InRungs rungs(facts.plan->exercise.ladders);
    const ShapedPiece& drawn = facts.draft.pieces[piece]->shaped;
    const double sizes = sizes_apart(rungs, *start, drawn);
    if (sizes > copied_within) return false;
    const bool is_reference = facts.plan->reference[piece].piece.outline == start->piece.outline;
    const double off = std::max(
        sizes, most_strayed(rungs, is_reference ? facts.pieces[piece].parts : rigid_parts({*start, drawn})));
    if (off > copied_within) return false;
    const double sizes_there = sizes_apart(rungs, facts.plan->finished[piece], drawn);
    if (sizes_there > copied_within) return true;
    return off <= std::max(sizes_there, most_strayed(rungs, facts.pieces[piece].from_finished));
}

}  // namespace

bool is_as_it_was(const DraftFacts& facts, const DartFact& dart, std::size_t task) {
    if (!dart.found) return false;
    const InRungs rungs(facts.plan->exercise.ladders);
    const DrawnDart drawn = drawn_dart(dart);
    const DrawnDart asked = drawn_dart(dart.asked->dart);
    const EarlierDart* nearest = nullptr;
    double least = squares_apart(rungs, drawn, asked);
    for (const EarlierDart& each : dart.asked->earlier) {
        const DrawnDart before = drawn_dart(each.dart);
        const double off = squares_apart(rungs, drawn, before);
        if (off >= least || is_same(before, asked)) continue;
        least = off;
        nearest = &each;
    }
    return nearest && nearest->task <= task;
}

namespace {

bool is_more_than_half_open(const ClosedFact& closed) {
    return closed.left &&
           std::abs(closed.left->figures.angle_rad) >= std::abs(closed.asked->dart.angle_rad) / 2;
}

// By the larger half of what the task was to change: its darts are as they were or not there, and the mouths
// that it was to close are open, or never were. A task without darts leaves nothing to tell this by.
bool is_undone(const DraftFacts& facts, std::size_t task) {
    bool is_any = false;
    for (const DartFact& dart : facts.darts) {
        if (!dart.asked->is_touched_by(task)) continue;
        const bool is_missing = !dart.found && dart.asked->placed_by == task;
        if (!is_missing && !is_as_it_was(facts, dart, task)) return false;
        is_any = true;
    }
    for (const ClosedFact& closed : facts.closed) {
        if (closed.asked->task != task) continue;
        if (!is_more_than_half_open(closed) && !was_never_opened(facts, closed)) return false;
        is_any = true;
    }
    return is_any;
}

}  // namespace

// What else was done there, as another dart moved by mistake, may have opened it.
bool was_never_opened(const DraftFacts& facts, const ClosedFact& closed) {
    const auto& opened_by = closed.asked->opened_by;
    if (!opened_by || closed.left || !closed.piece) return false;
    const auto tells_of_work = [&](const DartFact& dart) {
        if (dart.asked->piece != closed.asked->piece) return false;
        return dart.found ? dart.asked->placed_by == closed.asked->task : !dart.asked->placed_by;
    };
    return std::none_of(facts.darts.begin(), facts.darts.end(), tells_of_work) &&
           is_undone(facts, *opened_by);
}

MarkedTask marked_task(const DraftFacts& facts, std::size_t index) {
    MarkedTask out{index, facts.plan->exercise.tasks[index], {}};
    if (!std::holds_alternative<OperationTask>(out.task.what)) return out;
    const std::vector<std::size_t>& pieces = facts.plan->worked_on[index];
    if (!pieces.empty() && is_undone(facts, index))
        out.undone_on = facts.plan->finished[pieces.front()].piece.name;
    const auto is_unchanged = [&](std::size_t piece) { return is_as_handed_out(facts, piece); };
    if (!std::all_of(pieces.begin(), pieces.end(), is_unchanged)) return out;
    for (const std::size_t piece : pieces) out.not_begun.push_back(facts.plan->finished[piece].piece.name);
    return out;
}

ScoredLines not_begun_lines(const MarkedTask& task, Criterion criterion) {
    JudgedLine line;
    line.criterion = criterion;
    if (task.not_begun.empty()) {
        // Its other criteria say of each dart what is wrong with it.
        if (task.undone_on.empty() || criterion != Criterion::shape) return {};
        line.piece = task.undone_on;
        line.what = "the shape of the " + task.undone_on;
        line.remedy = "Do what the task asks for: its darts are as they were.";
        return {fault_line(std::move(line), "changed", "as it was")};
    }
    line.piece = task.not_begun.front();
    line.what = "the " + all_of(task.not_begun);
    line.remedy = "Do what the task asks for: nothing of it is done.";
    return {fault_line(std::move(line), "changed", "as it was handed out")};
}

}  // namespace dartwright
