#include "dartwright/assessing/exercise_plan.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/darts/impossible.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

/// A mouth of the finished pattern that stands nearer than this to one that was closed stands in its place,
/// mm: as near as an operation opens a mouth beside another one.
constexpr double same_mouth_mm = 1;

// The end named by the place that the operation opened the dart at; the nearer one if it named none.
RunEnd end_asked(const Made& operation, const ShapedPiece& shaped, const StandingDart& dart) {
    const Run* run = find_run(shaped.runs, dart.edge);
    if (!run) return RunEnd::start;
    RunEnd end = dart.distance_mm <= run->length / 2 ? RunEnd::start : RunEnd::end;
    for (const auto& [key, value] : operation.request) {
        const std::string place = value.substr(0, value.rfind('='));
        const std::size_t slash = place.rfind('/');
        if (!key.starts_with("to") || slash == std::string::npos || !place.starts_with(dart.edge + "@"))
            continue;
        end = end_named(*run, place.substr(slash + 1)).value_or(end);
    }
    return end;
}

// Where the pivot was before what carried it was moved.
Point pivot_before(const RigidParts& parts, const ShapedPiece& shaped, const StandingDart& dart) {
    const Run* run = find_run(shaped.runs, dart.edge);
    const double share = run && run->length > 0 ? dart.distance_mm / run->length : 0;
    const auto sides = mouth_sides(parts, shaped.runs, {dart.edge, share});
    if (!sides) return dart.figures.pivot;
    return apply(inverse(robust_motion(parts.places[sides->before])), dart.figures.pivot);
}

class Planning {
  public:
    explicit Planning(const Exercise& exercise) { plan_.exercise = exercise; }
    ExercisePlan planned();

  private:
    void do_tasks();
    void add_deeds(std::size_t task, const Made& operation, const Pattern& before);
    void touch(std::size_t task, const TouchedDart& dart);
    ShapedPiece reference_for(const ShapedPiece& finished) const;
    void shape_pieces();
    void place_darts();
    void drop_reopened();
    void find_longest();

    ExercisePlan plan_;
    struct Touched {
        TouchedDart dart;
        std::size_t task = 0;
    };
    std::vector<Touched> touched_;
    std::vector<std::pair<std::size_t, ClosedDart>> closed_;
};

void Planning::touch(std::size_t task, const TouchedDart& dart) {
    const auto same = std::find_if(touched_.begin(), touched_.end(), [&](const Touched& each) {
        return each.dart.piece == dart.piece && each.dart.dart == dart.dart;
    });
    if (same == touched_.end()) {
        touched_.push_back({dart, task});
        return;
    }
    same->task = task;
    same->dart.is_placed = same->dart.is_placed || dart.is_placed;
}

void Planning::add_deeds(std::size_t task, const Made& operation, const Pattern& before) {
    const OperationDeeds deeds = deeds_of(operation, {before, plan_.finished_pattern});
    for (const TouchedDart& dart : deeds.touched) touch(task, dart);
    for (const ClosedDart& dart : deeds.closed) closed_.emplace_back(task, dart);
}

void Planning::do_tasks() {
    plan_.finished_pattern = plan_.exercise.pattern;
    for (std::size_t i = 0; i < plan_.exercise.tasks.size(); ++i) {
        const Task& task = plan_.exercise.tasks[i];
        const auto* operation = std::get_if<OperationTask>(&task.what);
        if (!operation) continue;
        const std::string where = "task " + quoted(task.name) + ": ";
        try {
            const Pattern before = plan_.finished_pattern;
            plan_.finished_pattern = done(before, operation->operation);
            add_deeds(i, operation->operation, before);
        } catch (const Impossible& error) {
            throw Impossible(where + error.reason, error.remedy);
        } catch (const BadWords& error) {
            throw BadWords(where + error.what());
        }
    }
}

ShapedPiece Planning::reference_for(const ShapedPiece& finished) const {
    for (const Piece& piece : plan_.exercise.pattern.pieces) {
        if (piece.name != finished.piece.name) continue;
        ShapedPiece shaped = shaped_piece(piece, plan_.tolerances, "in the exercise");
        const bool has_all = std::all_of(finished.runs.begin(), finished.runs.end(), [&](const Run& run) {
            return find_run(shaped.runs, run.edge) != nullptr;
        });
        if (has_all) return shaped;
    }
    return finished;
}

void Planning::shape_pieces() {
    plan_.tolerances = tolerances_of(plan_.exercise.pattern);
    for (const Piece& piece : plan_.finished_pattern.pieces) {
        plan_.finished.push_back(shaped_piece(piece, plan_.tolerances, "in the exercise"));
        plan_.signatures.push_back(signatures_of(plan_.finished.back()));
        plan_.reference.push_back(reference_for(plan_.finished.back()));
    }
}

void Planning::place_darts() {
    for (std::size_t i = 0; i < plan_.finished.size(); ++i) {
        const ShapedPiece& shaped = plan_.finished[i];
        const RigidParts parts = rigid_parts({plan_.reference[i], shaped});
        for (const StandingDart& dart : standing_darts(shaped, edges_of(shaped))) {
            AskedDart asked{i, dart, {}, false, RunEnd::start, pivot_before(parts, shaped, dart)};
            for (const Touched& each : touched_) {
                if (each.dart.piece != shaped.piece.name || each.dart.dart != dart.name) continue;
                asked.task = each.task;
                asked.is_placed = each.dart.is_placed;
                const Task& task = plan_.exercise.tasks[each.task];
                asked.from = end_asked(std::get<OperationTask>(task.what).operation, shaped, dart);
            }
            plan_.darts.push_back(asked);
        }
    }
}

// What an operation closed and a later one opened again need not be closed.
void Planning::drop_reopened() {
    for (const auto& [task, closed] : closed_) {
        for (std::size_t i = 0; i < plan_.finished.size(); ++i) {
            const ShapedPiece& shaped = plan_.finished[i];
            if (shaped.piece.name != closed.piece || !find_run(shaped.runs, closed.edge)) continue;
            const bool is_open =
                std::any_of(plan_.darts.begin(), plan_.darts.end(),
                            [&, edge = closed.edge, at = closed.distance_mm](const AskedDart& each) {
                                return each.piece == i && each.dart.edge == edge &&
                                       std::abs(each.dart.distance_mm - at) < same_mouth_mm;
                            });
            if (is_open) continue;
            const double around = around_at(shaped.runs, edges_of(shaped), closed.edge) + closed.distance_mm;
            plan_.closed.push_back({i, closed, around, task});
        }
    }
}

void Planning::find_longest() {
    for (const ShapedPiece& shaped : plan_.finished) {
        for (const Run& run : shaped.runs) {
            if (!(run.length > plan_.longest_mm)) continue;
            plan_.longest_mm = run.length;
            plan_.longest_edge = run.edge;
            plan_.longest_piece = shaped.piece.name;
        }
    }
}

ExercisePlan Planning::planned() {
    do_tasks();
    shape_pieces();
    place_darts();
    drop_reopened();
    find_longest();
    for (const Finding& finding : check(plan_.finished_pattern, plan_.tolerances).findings)
        if (finding.severity == Severity::fault) plan_.findings.push_back(finding);
    for (const Task& task : plan_.exercise.tasks) {
        const auto* allowances = std::get_if<AllowanceTask>(&task.what);
        plan_.ruled.push_back(allowances ? apply_rule(plan_.finished_pattern, allowances->rule).pattern
                                         : Pattern{});
    }
    return std::move(plan_);
}

bool has_marks(const Task& task, Criterion criterion) {
    return std::any_of(task.marks.begin(), task.marks.end(),
                       [&](const CriterionMarks& each) { return each.criterion == criterion; });
}

}  // namespace

bool ExercisePlan::asks(Criterion criterion) const {
    return std::any_of(exercise.tasks.begin(), exercise.tasks.end(),
                       [&](const Task& task) { return has_marks(task, criterion); });
}

bool ExercisePlan::asks(std::optional<std::size_t> task, Criterion criterion) const {
    return task && has_marks(exercise.tasks[*task], criterion);
}

bool ExercisePlan::may_differ(Freedom freedom) const {
    return std::find(exercise.may_differ.begin(), exercise.may_differ.end(), freedom) !=
           exercise.may_differ.end();
}

ExercisePlan plan_of(const Exercise& exercise) {
    return Planning(exercise).planned();
}

}  // namespace dartwright
