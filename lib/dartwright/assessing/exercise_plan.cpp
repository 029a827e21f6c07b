#include "dartwright/assessing/exercise_plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "dartwright/assessing/left_undivided.hpp"
#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

/// A mouth of the finished pattern that stands nearer than this to one that was closed stands in its place,
/// mm: as near as an operation opens a mouth beside another one.
constexpr double same_mouth_mm = 1;
/// Angles nearer than this are one, radians: what rounding makes of them is far less.
constexpr double same_angle_rad = 1e-6;
/// Chord error of the outlines in a picture, mm: a tenth of a pencil's line.
constexpr double picture_mm = 0.05;

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
    explicit Planning(const Exercise& exercise) {
        plan_.exercise = exercise;
        plan_.without_divisions = std::make_shared<WithoutDivisions>();
    }
    ExercisePlan planned();

  private:
    void do_tasks();
    void add_deeds(std::size_t task, const Made& operation, const Pattern& before);
    void ask(AskedDart& asked) const;
    std::size_t known_as(ShapedPiece shaped);
    void find_start();
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
    std::vector<Touched> touched_;  ///< in the order of the tasks
    struct Closed {
        std::size_t task = 0;
        ClosedDart dart;
        std::vector<UndividedPlace> undivided = {};
        std::optional<std::size_t> opened_by = {};
    };
    std::vector<Closed> closed_;
    std::optional<std::size_t> opener_of(const ClosedDart& closed) const;
    void follow_step(Closed& closed, const PatternStep& step);
    std::size_t undivided_as(ShapedPiece whole);
    struct Step {
        std::size_t task = 0;
        Made made;
        std::map<std::string, std::vector<StandingDart>> darts;  ///< by piece, before it
    };
    std::vector<Step> before_;
    std::vector<std::vector<std::string>> worked_on_;  ///< by task
};

const Piece* find_piece(const Pattern& pattern, const std::string& name) {
    const auto found = std::find_if(pattern.pieces.begin(), pattern.pieces.end(),
                                    [&](const Piece& each) { return each.name == name; });
    return found == pattern.pieces.end() ? nullptr : &*found;
}

// Where the place lies on what is left of the run: measured from that end of it which is still there.
std::optional<double> place_on_rest(const Run& before, double at_mm, const Run& after) {
    if (std::abs(before.length - after.length) <= sum_rounding_mm) return at_mm;
    if (before.before == after.before && at_mm <= after.length) return at_mm;
    const double from_end = before.length - at_mm;
    if (before.after == after.after && from_end <= after.length) return after.length - from_end;
    return std::nullopt;
}

// A step that divides a piece leaves the mouth that an earlier one closed on one of the two, elsewhere along
// the edge.
void Planning::follow_step(Closed& closed, const PatternStep& step) {
    ClosedDart& dart = closed.dart;
    const Piece* before = find_piece(step.before, dart.piece);
    const Piece* same = find_piece(step.after, dart.piece);
    if (!before || (same && *same == *before)) return;
    const ShapedPiece whole = shaped_piece(*before, tolerances_of(step.before), "in the exercise");
    const Run* run = find_run(whole.runs, dart.edge);
    if (!run) return;
    closed.undivided.push_back({undivided_as(whole), dart.distance_mm, run->length - dart.distance_mm});
    for (const Piece& piece : step.after.pieces) {
        const bool is_of_it = piece.name == dart.piece || !find_piece(step.before, piece.name);
        if (!is_of_it) continue;
        const std::vector<Run> runs_after = runs_of(piece.outline);
        const Run* rest = find_run(runs_after, dart.edge);
        const auto at = rest ? place_on_rest(*run, dart.distance_mm, *rest) : std::nullopt;
        if (!at) continue;
        dart.piece = piece.name;
        dart.distance_mm = *at;
        dart.to_end_mm = rest->length - *at;
        return;
    }
}

void Planning::add_deeds(std::size_t task, const Made& operation, const Pattern& before) {
    const PatternStep step_done{before, plan_.finished_pattern};
    if (before.pieces.size() != plan_.finished_pattern.pieces.size()) {
        plan_.divisions.push_back(task);
        for (Closed& earlier : closed_) follow_step(earlier, step_done);
    }
    const OperationDeeds deeds = deeds_of(operation, step_done);
    for (const TouchedDart& dart : deeds.touched) touched_.push_back({dart, task});
    for (const ClosedDart& dart : deeds.closed) closed_.push_back({task, dart, {}, opener_of(dart)});
    worked_on_[task] = deeds.pieces;
    Step step{task, operation, {}};
    plan_.states.emplace_back();
    for (const Piece& piece : before.pieces) {
        ShapedPiece shaped = shaped_piece(piece, tolerances_of(before), "in the exercise");
        step.darts[piece.name] = standing_darts(shaped, edges_of(shaped));
        plan_.states.back().push_back(known_as(std::move(shaped)));
    }
    before_.push_back(std::move(step));
}

void Planning::do_tasks() {
    plan_.finished_pattern = plan_.exercise.pattern;
    worked_on_.resize(plan_.exercise.tasks.size());
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
            throw Impossible(where + error.reason_told, error.remedy_told);
        } catch (const BadWords& error) {
            throw BadWords(where + error.told());
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
        plan_.finished_polygons.push_back(polygon_of(plan_.finished.back().piece.outline, 1));
        plan_.signatures.push_back(signatures_of(plan_.finished.back()));
        plan_.reference.push_back(reference_for(plan_.finished.back()));
    }
}

void Planning::place_darts() {
    for (std::size_t i = 0; i < plan_.finished.size(); ++i) {
        const ShapedPiece& shaped = plan_.finished[i];
        const RigidParts parts = rigid_parts({plan_.reference[i], shaped});
        for (const StandingDart& dart : standing_darts(shaped, edges_of(shaped))) {
            AskedDart asked;
            asked.piece = i;
            asked.dart = dart;
            asked.pivot = pivot_before(parts, shaped, dart);
            ask(asked);
            plan_.darts.push_back(asked);
        }
    }
}

// Where it stands, a dart may have stood before, under another name even.
const StandingDart* standing_there(const std::vector<StandingDart>& darts, const StandingDart& dart) {
    const auto found = std::find_if(darts.begin(), darts.end(), [&](const StandingDart& each) {
        return each.edge == dart.edge && std::abs(each.distance_mm - dart.distance_mm) < same_mouth_mm;
    });
    return found == darts.end() ? nullptr : &*found;
}

// A dart that is drawn anew where it stands may be shifted along its edge with it, by what the edge grew.
const StandingDart* drawn_anew(const std::vector<StandingDart>& darts, const StandingDart& dart,
                               const std::string& name, const Made& made) {
    if (made.operation != "true" && made.operation != "repoint") return nullptr;
    const auto found = std::find_if(darts.begin(), darts.end(), [&](const StandingDart& each) {
        return each.edge == dart.edge && each.name == name;
    });
    return found == darts.end() ? nullptr : &*found;
}

// Before the task that closes it, from the last to the first.
std::optional<std::size_t> Planning::opener_of(const ClosedDart& closed) const {
    StandingDart dart;
    dart.name = closed.dart;
    dart.edge = closed.edge;
    dart.distance_mm = closed.distance_mm;
    for (auto step = before_.rbegin(); step != before_.rend(); ++step) {
        const auto there = step->darts.find(closed.piece);
        if (there == step->darts.end()) return std::nullopt;
        const StandingDart* earlier = standing_there(there->second, dart);
        if (!earlier) earlier = drawn_anew(there->second, dart, dart.name, step->made);
        if (!earlier) return step->task;
        dart = *earlier;
    }
    return std::nullopt;
}

// From the last task to the first, under the name that it had then.
void Planning::ask(AskedDart& asked) const {
    const ShapedPiece& shaped = plan_.finished[asked.piece];
    std::string name = asked.dart.name;
    double angle_rad = asked.dart.figures.angle_rad;
    for (auto step = before_.rbegin(); step != before_.rend(); ++step) {
        const auto touched = std::find_if(touched_.begin(), touched_.end(), [&](const Touched& each) {
            return each.task == step->task && each.dart.piece == shaped.piece.name && each.dart.dart == name;
        });
        const auto there = step->darts.find(shaped.piece.name);
        const StandingDart* earlier =
            there == step->darts.end() ? nullptr : standing_there(there->second, asked.dart);
        if (!earlier && touched != touched_.end() && there != step->darts.end())
            earlier = drawn_anew(there->second, asked.dart, name, step->made);
        if (touched != touched_.end()) {
            if (!asked.task) asked.task = step->task;
            asked.tasks.push_back(step->task);
            const bool is_turned =
                !earlier || std::abs(earlier->figures.angle_rad - angle_rad) > same_angle_rad;
            if (is_turned && !asked.angled_by) asked.angled_by = step->task;
        }
        if (earlier) {
            asked.earlier.push_back({step->task, *earlier});
            name = earlier->name;
            angle_rad = earlier->figures.angle_rad;
            continue;
        }
        if (touched == touched_.end()) break;
        asked.placed_by = step->task;
        asked.from = end_asked(step->made, shaped, asked.dart);
        break;
    }
}

std::size_t Planning::undivided_as(ShapedPiece whole) {
    for (std::size_t i = 0; i < plan_.undivided.size(); ++i)
        if (plan_.undivided[i].shaped.piece == whole.piece) return i;
    std::vector<StandingDart> darts = standing_darts(whole, edges_of(whole));
    std::vector<RunSignature> signatures = signatures_of(whole);
    plan_.undivided.push_back({std::move(whole), std::move(signatures), std::move(darts)});
    return plan_.undivided.size() - 1;
}

std::size_t Planning::known_as(ShapedPiece shaped) {
    const auto known = std::find_if(plan_.known.begin(), plan_.known.end(), [&](const ShapedPiece& each) {
        return each.piece.outline == shaped.piece.outline;
    });
    if (known != plan_.known.end()) return static_cast<std::size_t>(known - plan_.known.begin());
    plan_.known.push_back(std::move(shaped));
    return plan_.known.size() - 1;
}

void Planning::find_start() {
    plan_.states.emplace_back();
    for (const ShapedPiece& finished : plan_.finished) plan_.states.back().push_back(known_as(finished));
    for (const ShapedPiece& finished : plan_.finished) {
        plan_.start.emplace_back();
        for (const Piece& piece : plan_.exercise.pattern.pieces)
            if (piece.name == finished.piece.name)
                plan_.start.back() = shaped_piece(piece, plan_.tolerances, "in the exercise");
    }
    for (const std::vector<std::string>& names : worked_on_) {
        plan_.worked_on.emplace_back();
        for (std::size_t i = 0; i < plan_.finished.size(); ++i)
            if (std::find(names.begin(), names.end(), plan_.finished[i].piece.name) != names.end())
                plan_.worked_on.back().push_back(i);
    }
}

// What an operation closed and a later one opened again need not be closed.
void Planning::drop_reopened() {
    for (const auto& [task, closed, undivided, opened_by] : closed_) {
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
            // Of several that close one mouth the last counts.
            std::erase_if(plan_.closed,
                          [&, edge = closed.edge, at = closed.distance_mm](const AskedClosed& each) {
                              return each.piece == i && each.dart.edge == edge &&
                                     std::abs(each.dart.distance_mm - at) < same_mouth_mm;
                          });
            plan_.closed.push_back({i, closed, around, task, undivided, opened_by});
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
    find_start();
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

bool ExercisePlan::asks(const AskedDart& dart, Criterion criterion) const {
    return asks(dart.task_of(criterion), criterion);
}

std::optional<std::size_t> AskedDart::task_of(Criterion criterion) const {
    if (criterion == Criterion::place) return placed_by;
    return criterion == Criterion::angle && angled_by ? angled_by : task;
}

bool AskedDart::is_touched_by(std::size_t by) const {
    return std::find(tasks.begin(), tasks.end(), by) != tasks.end();
}

bool ExercisePlan::may_differ(Freedom freedom) const {
    return std::find(exercise.may_differ.begin(), exercise.may_differ.end(), freedom) !=
           exercise.may_differ.end();
}

std::vector<Point> polygon_of(const Outline& outline, double times) {
    return flat_outline(outline, DartsDrawn::to_points, times * picture_mm).points;
}

ExercisePlan plan_of(const Exercise& exercise) {
    return Planning(exercise).planned();
}

}  // namespace dartwright
