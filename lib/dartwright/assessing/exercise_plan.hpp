#pragma once

// Private to this room: what an exercise asks of every draft, worked out once.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise.hpp"
#include "dartwright/assessing/operation_deeds.hpp"
#include "dartwright/assessing/run_matching.hpp"
#include "dartwright/assessing/traced_cutting_line.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {

class WithoutDivisions;

/// A dart where it stands and how it is drawn.
struct StandingDart {
    std::size_t item = 0;  ///< in the outline
    std::string name;
    std::string edge;        ///< that it stands in; at a corner the one before it
    double distance_mm = 0;  ///< sewn, from the run's anticlockwise start
    double around_mm = 0;    ///< sewn, from the start of the first run expected of the piece
    DartFigures figures;
    double kink_deg = 0;  ///< of the edge over the mouth, closed about the point or the pivot, the less
};
/// The corner that the edge makes over the mouth when the dart is turned shut about the centre, degrees.
double kink_deg(const Outline& outline, std::size_t item, Point centre);
/// Those of the outline, in order. `edges` are the expected runs, in their order.
std::vector<StandingDart> standing_darts(const ShapedPiece& shaped, const std::vector<std::string>& edges);

/// A dart as it stood before a task worked on it.
struct EarlierDart {
    std::size_t task = 0;  ///< the first that is yet to be done
    StandingDart dart;
};
/// A dart of the finished pattern. What each task did to it is judged by what is left of that: where it
/// stands by the task that placed it last, its angle by the one that changed that last, and how it is drawn
/// by the one that touched it last.
struct AskedDart {
    std::size_t piece = 0;
    StandingDart dart;
    std::optional<std::size_t> task = {};       ///< that moved, opened or changed it last
    std::optional<std::size_t> placed_by = {};  ///< its place is asked for by that task
    std::optional<std::size_t> angled_by = {};  ///< that changed its angle last
    std::vector<std::size_t> tasks = {};        ///< all that touched it
    RunEnd from = RunEnd::start;                ///< the end that its place is measured from
    Point pivot = {};                           ///< in the piece that drafts are held against, `reference`
    /// Where it stands now it stood before these tasks too.
    std::vector<EarlierDart> earlier = {};

    std::optional<std::size_t> task_of(Criterion criterion) const;
    bool is_touched_by(std::size_t task) const;
};
/// Where a mouth that must be closed lies in its piece before a later task divides that.
struct UndividedPlace {
    std::size_t piece = 0;   ///< of the plan's undivided ones
    double distance_mm = 0;  ///< sewn, from the run's anticlockwise start
    double to_end_mm = 0;    ///< from its other end
};
/// A piece before a task divides it, with the darts that it has then.
struct UndividedPiece {
    ShapedPiece shaped;
    std::vector<RunSignature> signatures;
    std::vector<StandingDart> darts;
};
/// A mouth that must be closed.
struct AskedClosed {
    std::size_t piece = 0;
    ClosedDart dart;
    double around_mm = 0;
    std::size_t task = 0;
    std::vector<UndividedPlace> undivided = {};  ///< before each task that divides its piece
    /// The earlier task that opened it; none for one that the pattern is handed out with.
    std::optional<std::size_t> opened_by = {};
};

struct ExercisePlan {
    Exercise exercise;
    Tolerances tolerances;
    /// By the finished pattern's pieces: the piece before, or the finished one if that has other edges.
    std::vector<ShapedPiece> reference;
    Pattern finished_pattern;
    std::vector<ShapedPiece> finished;
    std::vector<std::vector<Point>> finished_polygons;  ///< of the finished pieces, for pictures
    std::vector<std::vector<RunSignature>> signatures;
    std::vector<AskedDart> darts;
    std::vector<AskedClosed> closed;
    std::vector<UndividedPiece> undivided;                ///< in which a mouth was closed
    std::vector<std::size_t> divisions;                   ///< the tasks that divide a piece
    std::shared_ptr<WithoutDivisions> without_divisions;  ///< null in a plan that is one of them itself
    std::vector<ShapedPiece> known;  ///< pieces before each of the tasks and after the last, each shape once
    std::shared_ptr<TracedCuttingLines> traced = std::make_shared<TracedCuttingLines>();  ///< of `known`
    /// Which of them the pattern has before each of the tasks and after the last.
    std::vector<std::vector<std::size_t>> states;
    std::vector<std::optional<ShapedPiece>> start;    ///< by the finished pieces, as it was handed out
    std::vector<std::vector<std::size_t>> worked_on;  ///< by task: the finished pieces that it changed
    std::vector<Pattern> ruled;     ///< by task: the finished pattern with its widths, for allowances
    std::vector<Finding> findings;  ///< faults that the finished pattern has itself
    double longest_mm = 0;          ///< of all runs
    std::string longest_edge;
    std::string longest_piece;

    bool asks(Criterion criterion) const;
    bool asks(std::optional<std::size_t> task, Criterion criterion) const;
    /// Of the dart, by the task whose work on it the criterion judges.
    bool asks(const AskedDart& dart, Criterion criterion) const;
    bool may_differ(Freedom freedom) const;
};

/// BadWords, UnknownName and Impossible name the task; Impossible for a piece that does not close.
ExercisePlan plan_of(const Exercise& exercise);

/// The outline in a picture, darts drawn to their points; `times` its size.
std::vector<Point> polygon_of(const Outline& outline, double times);
std::vector<std::string> edges_of(const ShapedPiece& shaped);
/// The sewn distance around a piece at which each run begins, in the order of `edges`; a run that it lacks
/// has no length.
double around_at(const std::vector<Run>& runs, const std::vector<std::string>& edges,
                 const std::string& edge);
double sewn_around(const ShapedPiece& shaped);

}  // namespace dartwright
